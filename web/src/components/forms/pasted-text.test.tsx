import { fireEvent, render, screen } from '@testing-library/react';
import { expect, it, vi } from 'vitest';
import { NothingKept } from './nothing-kept.tsx';
import { PastedText } from './pasted-text.tsx';

it('never lets a long text be cut by typing into its beginning', () => {
  const change = vi.fn();
  const { rerender } = render(<PastedText text={'a'.repeat(20_001)} rows={5} change={change} />);
  const box = screen.getByLabelText<HTMLTextAreaElement>('or paste it');
  expect(box.readOnly).toBe(true);
  expect(screen.getByText(/The first 20,000 of 20,001 characters/)).toBeTruthy();
  fireEvent.click(screen.getByText('empty this'));
  expect(change).toHaveBeenCalledExactlyOnceWith('');
  rerender(<PastedText text={'a'.repeat(20_000)} rows={5} change={change} />);
  expect(box.readOnly).toBe(false);
  expect(box.value).toHaveLength(20_000);
  fireEvent.change(box, { target: { value: 'b' } });
  expect(change).toHaveBeenLastCalledWith('b');
});

it('says that a press kept nothing, and stays silent before', () => {
  const { rerender } = render(<NothingKept asked={false} />);
  expect(screen.getByRole('status').textContent).toBe('');
  rerender(<NothingKept asked />);
  expect(screen.getByRole('status').textContent).toContain('Nothing was kept');
});
