import type { BillsFragment } from '../../lib/graphql/generated/graphql.ts';
import { fuelUnitOf, significant, type Fuel, type HeatingValues, type UnitSystem } from '../../lib/units/format.ts';

/** Unit of fuel on charts and in tables. */
export const fuelUnit = (fuel: Fuel, units: UnitSystem): string => (units === 'us' ? fuelUnitOf(fuel, 'us')[0] : 'kWh');

/** Fuel in that unit as a number, to what is known. */
export const inUnit = (kwh: number, fuel: Fuel, units: UnitSystem, heating?: HeatingValues): number =>
  significant(units === 'us' ? kwh / fuelUnitOf(fuel, 'us', heating)[1] : kwh, 3);

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
