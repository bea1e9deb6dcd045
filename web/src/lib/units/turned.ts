import { FOOT_M, MMBTU_KWH, unitIn, usdPerUnitIn, type UnitSystem } from './format.ts';
import { readNumber } from './typed-number.ts';

/** A typed figure turned by a rule; what is empty or no number stays as it stands. */
function turned(text: string, from: UnitSystem, to: UnitSystem, rule: (value: number) => number, decimals: number): string {
  const { value } = readNumber(text);
  return from === to || value === null || Number.isNaN(value) ? text : String(Number(rule(value).toFixed(decimals)));
}

const by = (usPerSi: number) => (to: UnitSystem) => (value: number) => (to === 'us' ? value * usPerSi : value / usPerSi);
const feet = by(1 / FOOT_M);
const btuPerHour = by(1e6 / MMBTU_KWH);
// a thousand Btu an hour is to a kilowatt what a million Btu is to a megawatt hour
const mmbtu = by(1000 / MMBTU_KWH);
const perSquareFoot = by(FOOT_M * FOOT_M);

/** ft and m, to the millimetre. */
export const turnedLength = (t: string, from: UnitSystem, to: UnitSystem): string => turned(t, from, to, feet(to), 3);
/** Set points in F and C. */
export const turnedDegrees = (t: string, from: UnitSystem, to: UnitSystem): string =>
  turned(t, from, to, (v) => (to === 'us' ? v * 1.8 + 32 : (v - 32) / 1.8), 2);
/** Rated input in Btu/h and kW. */
export const turnedPower = (t: string, from: UnitSystem, to: UnitSystem): string =>
  turned(t, from, to, btuPerHour(to), to === 'us' ? 0 : 2);
/** What a burner fires, in kBtu/h and kW. */
export const turnedFiring = (t: string, from: UnitSystem, to: UnitSystem): string => turned(t, from, to, mmbtu(to), 2);
/** Heat of a season in MMBtu and MWh. */
export const turnedHeat = (t: string, from: UnitSystem, to: UnitSystem): string => turned(t, from, to, mmbtu(to), 3);
/** Dollars a ft² and a m². */
export const turnedPerArea = (t: string, from: UnitSystem, to: UnitSystem): string => turned(t, from, to, perSquareFoot(to), 3);

/** How many of one unit of fuel one of another holds, where the two stand for each other in the two systems. */
function holds(unit: string, other: string): number | undefined {
  for (const u of ['us', 'si'] as const) {
    if (unitIn(unit, u) === other) return 1 / usdPerUnitIn(1, unit, u);
    if (unitIn(other, u) === unit) return usdPerUnitIn(1, other, u);
  }
  return undefined;
}

/** A quantity of fuel typed by one unit, by another. */
export const turnedFuel = (t: string, unit: string, other: string): string => {
  const each = unit === other ? undefined : holds(unit, other);
  return each === undefined ? t : turned(t, 'us', 'si', (v) => v * each, 1);
};
/** A price a unit of fuel, a unit of another. */
export const turnedPrice = (t: string, unit: string, other: string): string => {
  const each = unit === other ? undefined : holds(unit, other);
  return each === undefined ? t : turned(t, 'us', 'si', (v) => v / each, 5);
};
