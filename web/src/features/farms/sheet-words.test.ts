import { expect, it } from 'vitest';
import { cheaper, fromTo, fuelRange, offered, paybackWords, quantityWords } from './sheet-words.ts';

const option = (key: string, npv: number, extra: object = {}) => ({
  id: `h~${key}`,
  key,
  title: key,
  parts: [key],
  isRunningChange: false,
  result: {
    outlayUsd: 1000,
    npvUsd: { p50: npv },
    savingUsd: { p50: npv / 10 },
    lastingPayback: { p50Season: npv > 0 ? 4 : null, neverShare: 0.1 },
  },
  ...extra,
});
const none = { ...option('none', 0), parts: [], result: null };

it('is about the work asked for, else the one granted, else the one worth most, else the first studied', () => {
  const all = [none, option('seal', 100), option('foam', 900), option('curtain', 400)];
  expect(offered(all, 'curtain', ['h~seal'])?.key).toBe('curtain');
  expect(offered(all, null, ['h~seal'])?.key).toBe('seal');
  expect(offered(all, 'none', [])?.key).toBe('foam');
  expect(offered([none, option('foam', -5), option('curtain', -9)], null, [])?.key).toBe('foam');
  expect(offered([none], null, [])).toBeUndefined();
});

it('names cheaper works that save, the most saving first, and not the work itself', () => {
  const late = option('late', 300, { isRunningChange: true });
  const all = [none, option('foam', 900), option('seal', 100), late, option('cooler', -10, { isRunningChange: true })];
  expect(cheaper(all, all[1]).map((o) => o.key)).toEqual(['late', 'seal']);
  expect(cheaper(all, late).map((o) => o.key)).toEqual(['seal']);
});

it('tells ranges with the low end first, fuel in the unit it is bought by', () => {
  expect(fromTo({ p10: 812, p90: 2140 })).toBe('$812 to $2,140');
  expect(fuelRange(1000, 'gal', { mean: 50, p10: 40, p90: 65 }, 'us')).toBe('800 to 1,300 gal');
  expect(fuelRange(1000, 'gal', { mean: 50, p10: 40, p90: 65 }, 'si')).toBe('3,030 to 4,920 L');
});

it('shows never as never', () => {
  expect(paybackWords({ p50Season: 4, p90Season: 7, neverShare: 0 })).toBe(
    'by winter 4 in the middle of all futures, by winter 7 in nine of ten; never in 0 of 100',
  );
  expect(paybackWords({ p50Season: null, p90Season: null, neverShare: 0.62 })).toBe(
    'in under half of the futures, not in nine of ten; never in 62 of 100',
  );
});

it('half an hour a week stays half an hour', () => {
  expect(quantityWords(0.5, 'h/week')).toBe(' (0.5 h/week)');
  expect(quantityWords(186.4, 'kWh')).toBe(' (190 kWh)');
  expect(quantityWords(null, 'kWh')).toBe('');
});
