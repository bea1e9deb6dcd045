import { expect, it } from 'vitest';
import { digits, shown, toShown, toSi } from './assumption-units.ts';

it('shows a U-value, an R-value and a temperature in the units of the trade', () => {
  expect(toShown(3.9747, 'W/m2K', 'us')).toBeCloseTo(0.7, 3);
  expect(toShown(0.2642, 'm2K/W', 'us')).toBeCloseTo(1.5, 2);
  expect(toShown(7.2222, 'C', 'us')).toBeCloseTo(45, 3);
  expect(toShown(10.7639, '$/m2', 'us')).toBeCloseTo(1, 4);
});

it('gives back what was typed, in every unit and both systems', () => {
  for (const unit of ['m', '$/m2', 'W/m2K', 'm2K/W', 'C', 'K', '1/a', '1', 'h/week'])
    for (const units of ['us', 'si'] as const) expect(toSi(toShown(1.234, unit, units), unit, units)).toBeCloseTo(1.234, 12);
});

it('says a rate in percent', () => {
  expect(shown('1/a', 'si').unit).toBe('% a year');
  expect(digits(toShown(0.05, '1/a', 'us'))).toBe('5');
});
