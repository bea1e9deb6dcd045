import type { BillsFragment } from '../../lib/graphql/generated/graphql.ts';
import { significant, type Fuel, type UnitSystem } from '../../lib/units/format.ts';

const UNITS: Record<Fuel, [string, number]> = {
  NATURAL_GAS: ['therm', 29.3071],
  PROPANE: ['gal', 26.7671],
  FUEL_OIL: ['gal', 40.646],
  ELECTRICITY: ['kWh', 1],
  WOOD_PELLETS: ['ton', 4835.7],
};

/** Unit of fuel on charts and in tables. */
export const fuelUnit = (fuel: Fuel, units: UnitSystem): string => (units === 'us' ? UNITS[fuel][0] : 'kWh');

/** Fuel in that unit as a number, to what is known. */
export const inUnit = (kwh: number, fuel: Fuel, units: UnitSystem, digits = 3): number =>
  significant(units === 'us' ? kwh / UNITS[fuel][1] : kwh, digits);

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A day as 17 Feb 2024. */
export const day = (iso: string): string => {
  const [y = '', m = '1', d = '1'] = iso.split('-');
  return `${String(Number(d))} ${months[Number(m) - 1] ?? ''} ${y}`;
};

/** A sentence that begins with a capital and ends with a stop. */
export const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith('.') ? '' : '.'}`;

/** How many lines are in each state, in words. */
export function lineCounts(entries: readonly Pick<BillsFragment['entries'][number], 'use'>[]): string {
  const of = (use: string) => entries.filter((e) => String(e.use) === use).length;
  const parts = [
    [of('USED'), 'count'],
    [of('OPENS'), 'opens the account'],
    [of('WAITING'), 'wait'],
    [of('REPLACED'), 'replaced'],
    [of('HELD'), 'held'],
  ] as const;
  return parts
    .filter(([n]) => n > 0)
    .map(([n, word]) => `${String(n)} ${word}`)
    .join(', ');
}
