import { readNumber } from './typed-number.ts';

export type UnitSystem = 'us' | 'si';
export type Fuel = 'NATURAL_GAS' | 'PROPANE' | 'FUEL_OIL' | 'ELECTRICITY' | 'WOOD_PELLETS';

const FOOT = 0.3048;
const MMBTU = 293.071070172;

/** Rounds to so many significant digits; more than are known are never shown. */
export function significant(value: number, digits: number): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const scale = 10 ** (digits - 1 - Math.floor(Math.log10(Math.abs(value))));
  return Math.round(value * scale) / scale;
}

const grouped = (value: number, decimals = 0): string =>
  (Number(value.toFixed(decimals)) || 0)
    .toLocaleString('en-US', { minimumFractionDigits: decimals, maximumFractionDigits: decimals })
    .replace('-', '−');

/** A count with its noun: 1 line, 2 lines; a noun of another plural tells it. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${grouped(count)} ${count === 1 ? one : many}`;

/** Dollars to three significant digits: $24,500. */
export const dollars = (usd: number, digits = 3): string => {
  const value = significant(usd, digits);
  // the joiner keeps sign and figure on one line
  return `${value < 0 ? '−\u2060' : ''}$${grouped(Math.abs(value))}`;
};

/** The figure alone, for a column whose head says $. */
export const figure = (usd: number, digits = 3): string => grouped(significant(usd, digits));

export const ofHundred = (share: number): string => (share > 0 && share < 0.005 ? 'under 1' : String(Math.round(100 * share)));

export const heatUnit = (u: UnitSystem): string => (u === 'us' ? 'MMBtu' : 'MWh');
export const heat = (kwh: number, u: UnitSystem): string => {
  const v = u === 'us' ? kwh / MMBTU : kwh / 1000;
  return v < 10 && v > -10 ? grouped(v, 1) : grouped(v);
};

export const length = (m: number, u: UnitSystem): string => {
  if (u === 'si') return `${grouped(m, m < 20 ? 2 : 1)} m`;
  const inches = Math.round(m / FOOT / (1 / 12));
  return inches % 12 === 0 ? `${grouped(inches / 12)} ft` : `${grouped(Math.floor(inches / 12))} ft ${String(inches % 12)} in`;
};

/** A length in the chosen unit, the other one behind it. */
export const lengthBoth = (m: number, u: UnitSystem): string => `${length(m, u)} (${length(m, u === 'us' ? 'si' : 'us')})`;

export const area = (m2: number, u: UnitSystem): string => (u === 'us' ? `${grouped(m2 / FOOT / FOOT)} ft²` : `${grouped(m2)} m²`);
export const temperature = (c: number, u: UnitSystem): string => (u === 'us' ? `${grouped(c * 1.8 + 32)} F` : `${grouped(c, 1)} C`);
/** Words of the server that tell differences of temperature in F, in the chosen unit. */
export const inDegrees = (words: string, u: UnitSystem): string =>
  u === 'us' ? words : words.replace(/([+−]?)([\d.]+) F\b/g, (_, sign: string, f: string) => `${sign}${grouped(Number(f) / 1.8, 1)} K`);
/** A wind speed. */
export const speed = (mPerS: number, u: UnitSystem): string =>
  u === 'us' ? `${grouped(mPerS / 0.44704)} mph` : `${grouped(mPerS, 1)} m/s`;
export const power = (kw: number, u: UnitSystem): string =>
  u === 'us' ? `${grouped(significant(kw * 3.412142, 3))} kBtu/h` : `${grouped(significant(kw, 3))} kW`;

const US_FUEL: Record<Fuel, [unit: string, kwh: number]> = {
  NATURAL_GAS: ['therm', 29.3071],
  PROPANE: ['gal', 26.7671],
  FUEL_OIL: ['gal', 40.646],
  ELECTRICITY: ['kWh', 1],
  WOOD_PELLETS: ['ton', 4835.7],
};

/** Fuel in the unit it is bought by. */
export const fuelAmount = (kwh: number, fuel: Fuel, u: UnitSystem): string => {
  const [unit, per] = u === 'us' ? US_FUEL[fuel] : (['kWh', 1] as const);
  return `${grouped(significant(kwh / per, 3))} ${unit}`;
};

export const fuelName: Record<Fuel, string> = {
  NATURAL_GAS: 'natural gas',
  PROPANE: 'propane',
  FUEL_OIL: 'No. 2 oil',
  ELECTRICITY: 'electricity',
  WOOD_PELLETS: 'wood pellets',
};

export const fuelColour: Record<Fuel, string> = {
  NATURAL_GAS: 'var(--fuel-gas)',
  PROPANE: 'var(--fuel-propane)',
  FUEL_OIL: 'var(--fuel-oil)',
  ELECTRICITY: 'var(--fuel-electricity)',
  WOOD_PELLETS: 'var(--fuel-pellets)',
};

/** A length typed in ft or m, by the switch, as metres; undefined when nothing is typed, NaN when it is no number. */
export const toMetres = (typed: string, u: UnitSystem): number | undefined => {
  const { value } = readNumber(typed);
  return value === null ? undefined : u === 'us' ? value * FOOT : value;
};
export const fromMetres = (m: number | null | undefined, u: UnitSystem): string =>
  m === null || m === undefined ? '' : String(Math.round((u === 'us' ? m / FOOT : m) * 100) / 100);
