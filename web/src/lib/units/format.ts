import { readNumber } from './typed-number.ts';

export type UnitSystem = 'us' | 'si';
export type Fuel = 'NATURAL_GAS' | 'PROPANE' | 'FUEL_OIL' | 'ELECTRICITY' | 'WOOD_PELLETS';

/** Metres a foot. */
export const FOOT_M = 0.3048;
/** Litres a US gallon. */
export const GALLON_L = 3.785411784;
/** kWh a million British thermal units. */
export const MMBTU_KWH = 293.071070172;

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

/** Words that stay on one line. */
export const unbroken = (words: string): string => words.replaceAll(' ', '\u00a0');

/** A count with its noun: 1 line, 2 lines; a noun of another plural tells it. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${grouped(count)} ${count === 1 ? one : many}`;

/** Dollars to three significant digits: $24,500. */
export const dollars = (usd: number, digits = 3): string => {
  const value = significant(usd, digits);
  // the joiner keeps sign and figure on one line
  return `${value < 0 ? '−\u2060' : ''}$${grouped(Math.abs(value))}`;
};

/** Dollars and cents: $1.62. */
export const dollarsAndCents = (usd: number): string => `${usd <= -0.005 ? '−\u2060' : ''}$${grouped(Math.abs(usd), 2)}`;

/** A rate in per cent to a tenth, its sign not apart from it. */
export const perCent = (rate: number): string => grouped(100 * rate, 1).replace('−', '−\u2060');

/** The figure alone, for a column whose head says $. */
export const figure = (usd: number, digits = 3): string => grouped(significant(usd, digits));

export const ofHundred = (share: number): string => (share > 0 && share < 0.005 ? 'under 1' : String(Math.round(100 * share)));

export const heatUnit = (u: UnitSystem): string => (u === 'us' ? 'MMBtu' : 'MWh');
export const heat = (kwh: number, u: UnitSystem): string => {
  const v = u === 'us' ? kwh / MMBTU_KWH : kwh / 1000;
  return v < 10 && v > -10 ? grouped(v, 1) : grouped(v);
};

export const length = (m: number, u: UnitSystem): string => {
  if (u === 'si') return `${grouped(m, m < 20 ? 2 : 1)} m`;
  const inches = Math.round(m / FOOT_M / (1 / 12));
  return inches % 12 === 0 ? `${grouped(inches / 12)} ft` : `${grouped(Math.floor(inches / 12))} ft ${String(inches % 12)} in`;
};

export const area = (m2: number, u: UnitSystem): string => (u === 'us' ? `${grouped(m2 / FOOT_M / FOOT_M)} ft²` : `${grouped(m2)} m²`);
export const temperature = (c: number, u: UnitSystem): string => (u === 'us' ? `${grouped(c * 1.8 + 32)} F` : `${grouped(c, 1)} C`);
/** Words of the server that tell differences of temperature in F, in the chosen unit. */
export const inDegrees = (words: string, u: UnitSystem): string =>
  u === 'us' ? words : words.replace(/([+−]?)([\d.]+) F\b/g, (_, sign: string, f: string) => `${sign}${grouped(Number(f) / 1.8, 1)} K`);
/** A wind speed. */
export const speed = (mPerS: number, u: UnitSystem): string =>
  u === 'us' ? `${grouped(mPerS / 0.44704)} mph` : `${grouped(mPerS, 1)} m/s`;
export const power = (kw: number, u: UnitSystem): string =>
  u === 'us' ? `${grouped(significant(kw * 3.412142, 3))} kBtu/h` : `${grouped(significant(kw, 3))} kW`;

/** Printed heating values: Btu a gallon of propane and of oil, a short ton of pellets. */
export interface HeatingValues {
  propaneBtuPerGallon: number;
  oilBtuPerGallon: number;
  pelletsBtuPerTon: number;
}

/** EIA 2012, which the server takes where the assumptions choose none. */
export const USUAL_HEATING: HeatingValues = { propaneBtuPerGallon: 91_333, oilBtuPerGallon: 138_690, pelletsBtuPerTon: 16_500_000 };

const TON_T = 0.90718474;
const BTU_KWH = MMBTU_KWH / 1e6;

/** The unit a fuel is bought by and its kWh. Under SI gas and power are counted by their heat, propane and oil by volume, pellets by weight. */
export const fuelUnitOf = (fuel: Fuel, u: UnitSystem, heating: HeatingValues = USUAL_HEATING): [unit: string, kwh: number] => {
  const [volume, weight] = u === 'us' ? [1, 1] : [GALLON_L, TON_T];
  if (fuel === 'ELECTRICITY') return ['kWh', 1];
  if (fuel === 'NATURAL_GAS') return u === 'us' ? ['therm', MMBTU_KWH / 10] : ['kWh', 1];
  return fuel === 'WOOD_PELLETS'
    ? [u === 'us' ? 'ton' : 't', (heating.pelletsBtuPerTon * BTU_KWH) / weight]
    : [u === 'us' ? 'gal' : 'L', ((fuel === 'PROPANE' ? heating.propaneBtuPerGallon : heating.oilBtuPerGallon) * BTU_KWH) / volume];
};

/** Fuel in the unit it is bought by. */
export const fuelAmount = (kwh: number, fuel: Fuel, u: UnitSystem, heating?: HeatingValues): string => {
  const [unit, per] = fuelUnitOf(fuel, u, heating);
  const amount = kwh / per;
  return `${grouped(significant(amount, 3), Math.abs(amount) < 10 ? 1 : 0)} ${unit}`;
};

/** Units that a price or quantity may come in, with the unit the other system would use and how many of that one it holds. */
const OTHER_UNIT: Record<UnitSystem, Record<string, readonly [unit: string, holds: number]>> = {
  si: {
    gal: ['L', GALLON_L],
    therm: ['kWh', MMBTU_KWH / 10],
    ccf: ['m³', 2.8316846592],
    mcf: ['m³', 28.316846592],
    m3: ['m³', 1],
    MMBtu: ['MWh', MMBTU_KWH / 1000],
    ton: ['t', TON_T],
    lb: ['kg', 0.45359237],
  },
  us: {
    L: ['gal', 1 / GALLON_L],
    m3: ['mcf', 1 / 28.316846592],
    MWh: ['MMBtu', 1000 / MMBTU_KWH],
    t: ['ton', 1 / TON_T],
    kg: ['lb', 1 / 0.45359237],
  },
};

/** The unit in which the chosen system counts what comes in another. */
export const unitIn = (unit: string, u: UnitSystem): string => OTHER_UNIT[u][unit]?.[0] ?? unit;
/** A price a unit, in dollars a unit of the chosen system. */
export const usdPerUnitIn = (usd: number, unit: string, u: UnitSystem): number => usd / (OTHER_UNIT[u][unit]?.[1] ?? 1);
/** A price with three digits or to the cent: $0.129, $2.66, $499. */
export const unitPrice = (usd: number): string => `$${Math.abs(usd) < 1 ? grouped(usd, 3) : grouped(usd, Math.abs(usd) < 100 ? 2 : 0)}`;
/** A price and its unit as words: $2.66 a gal, or $0.703 a L. */
export const priceOf = (usd: number, unit: string, u: UnitSystem): string =>
  `${unitPrice(usdPerUnitIn(usd, unit, u))} a ${unitIn(unit, u)}`;

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
  return value === null ? undefined : u === 'us' ? value * FOOT_M : value;
};
export const fromMetres = (m: number | null | undefined, u: UnitSystem): string =>
  m === null || m === undefined ? '' : String(Math.round((u === 'us' ? m / FOOT_M : m) * 100) / 100);
