import type { UnitSystem } from '../../lib/units/format.ts';

/** How an SI number is shown and typed: unit, factor from SI, and what is added. */
interface Shown {
  unit: string;
  times: number;
  plus: number;
}

const FT2 = 0.09290304;
const R = 0.1761101838;

// SI unit of the engine -> US customary
const us: Record<string, [unit: string, times: number, plus?: number]> = {
  m: ['ft', 1 / 0.3048],
  '$/m2': ['$/ft²', FT2],
  '$/m': ['$/ft', 0.3048],
  'W/m2K': ['Btu/h ft² F', R],
  'm2K/W': ['h ft² F/Btu', 1 / R],
  'm2K/W per m': ['h ft² F/Btu per in', 0.0254 / R],
  'W/mK': ['Btu/h ft F', 0.5777893],
  'W/m2': ['Btu/h ft²', 0.3169983],
  'Wh/m3K': ['Btu/ft³ F', 0.05367632],
  K: ['F', 1.8],
  'K/a': ['F a year', 1.8],
  C: ['F', 1.8, 32],
  kW: ['kW', 1],
};

const plain: Record<string, string> = {
  '1': '',
  '1/a': '% a year',
  a: 'years',
  '$/a': '$ a year',
  'h/week': 'h a week',
  '1/h': 'an hour',
  '1/d': 'a day',
  h: 'h',
  d: 'days',
  K: 'K',
  'K/a': 'K a year',
  C: 'C',
  m2: 'm²',
  '$/m2': '$/m²',
  'W/m2K': 'W/m²K',
  'm2K/W': 'm²K/W',
  'm2K/W per m': 'm²K/W per m',
  'W/m2': 'W/m²',
  'Wh/m3K': 'Wh/m³K',
  count: '',
  month: 'month',
  year: '',
};

/** A share from 0 to 1 is shown in percent. */
export function shown(unit: string, units: UnitSystem): Shown {
  if (unit === '1/a') return { unit: '% a year', times: 100, plus: 0 };
  const known = us[unit];
  if (units === 'us' && known) return { unit: known[0], times: known[1], plus: known[2] ?? 0 };
  return { unit: plain[unit] ?? unit, times: 1, plus: 0 };
}

export const toShown = (si: number, unit: string, units: UnitSystem): number => {
  const s = shown(unit, units);
  return si * s.times + s.plus;
};

export const toSi = (typed: number, unit: string, units: UnitSystem): number => {
  const s = shown(unit, units);
  return (typed - s.plus) / s.times;
};

/** A number with no more digits than are known. */
export const digits = (v: number): string =>
  Math.abs(v) >= 1e4 || Number.isInteger(v)
    ? v.toLocaleString('en-US', { maximumFractionDigits: 0, useGrouping: Math.abs(v) >= 1e4 })
    : Number(v.toPrecision(3)).toString();
