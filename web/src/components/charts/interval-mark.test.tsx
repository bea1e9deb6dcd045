import { render, screen } from '@testing-library/react';
import { expect, it } from 'vitest';
import { IntervalMark } from './interval-mark.tsx';

it('says the middle, nine in ten and never in words', () => {
  render(<IntervalMark payback={{ p10Season: 2, p25Season: 3, p50Season: 4, p75Season: 9, p90Season: null, neverShare: 0.19 }} />);
  expect(screen.getByRole('img', { name: 'middle season 4, nine in ten by never, never in 19 of 100' })).toBeTruthy();
});

it('makes up no end for a line that runs into never', () => {
  const { container } = render(<IntervalMark payback={{ p10Season: 2, p50Season: 4, p90Season: null, neverShare: 0.2 }} />);
  expect(container.querySelectorAll('line[stroke-dasharray="2 3"]').length).toBe(1);
});
