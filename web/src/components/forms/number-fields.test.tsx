import { fireEvent, render, screen } from '@testing-library/react';
import { expect, it, vi } from 'vitest';
import { Field } from './field.tsx';
import { InlineNumber } from './inline-number.tsx';

const field = (value: string) => (
  <Field label="size, gal" value={value} change={() => undefined} name="size" number={{ least: 1, most: 30000 }} faults={[]} />
);

it('says at the field what is wrong with a typed number, and keeps its form from being sent', () => {
  const { rerender } = render(field('-5'));
  const input = screen.getByLabelText<HTMLInputElement>('size, gal');
  expect(screen.getByText('−5 is outside. Give 1 to 30,000.')).toBeTruthy();
  expect(input.checkValidity()).toBe(false);
  expect(input.getAttribute('aria-describedby')).toBeTruthy();
  expect(input.value).toBe('-5');
  rerender(field('1,000'));
  expect(screen.queryByText(/outside/)).toBeNull();
  expect(input.checkValidity()).toBe(true);
});

it('takes an inline figure only when it can be right, and nothing typed is lost', () => {
  const save = vi.fn();
  render(<InlineNumber label="budget, dollars" value={50000} expected={{ least: 0, most: 1e8 }} save={save} />);
  const input = screen.getByLabelText<HTMLInputElement>('budget, dollars');
  for (const [typed, said] of [
    ['', 'Empty.'],
    ['-5', 'Give 0 to'],
    ['2,5', 'Write a point: 2.5'],
    ['much', 'is no number'],
    ['1e15', 'Give 0 to'],
  ] as const) {
    fireEvent.change(input, { target: { value: typed } });
    fireEvent.blur(input);
    expect(document.body.textContent).toContain(said);
    expect(input.value).toBe(typed);
    expect(input.getAttribute('aria-invalid')).toBe('true');
  }
  expect(save).not.toHaveBeenCalled();
  fireEvent.change(input, { target: { value: '$60,000' } });
  fireEvent.keyDown(input, { key: 'Enter' });
  expect(save).toHaveBeenCalledExactlyOnceWith(60000);
});
