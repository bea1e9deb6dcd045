import { readNumber } from '../../lib/units/typed-number.ts';
import type { PastFragment } from '../../lib/graphql/generated/graphql.ts';

export type Way = PastFragment['ways'][number];

const fixed = (value: number, least: number, most = least): string =>
  value.toLocaleString('en-US', { minimumFractionDigits: least, maximumFractionDigits: most }).replace('-', '−');

/** Money as a bill prints it, to the cent. */
export const cents = (usd: number): string => fixed(usd, 2);

/** A price as a bill prints it, to $0.0001. */
export const price = (usd: number): string => fixed(usd, 4);

/** A quantity as a ticket prints it. */
export const bought = (units: number): string => fixed(units, 1, 2);

/** Months that hold fuel or money: what is not there needs no row. */
export const months = (past: PastFragment) =>
  past.months.map((m, no) => ({ ...m, no })).filter((m) => m.units !== 0 || past.ways.some((w) => (w.monthsUsd[m.no] ?? 0) !== 0));

/** The answer in one sentence; the cheapest way first, against what was paid. */
export function answer(past: PastFragment): string {
  const known = past.ways.filter((w) => w.totalUsd != null).sort((a, b) => (a.totalUsd ?? 0) - (b.totalUsd ?? 0));
  const [least] = known;
  const units = past.months.reduce((sum, m) => sum + m.units, 0);
  const start = `In ${past.name} you bought ${bought(units)} ${past.unit}${past.paidUsd == null ? '' : ` for $${cents(past.paidUsd)}`}`;
  if (!least) return `${start}.`;
  const said = `the least of ${String(known.length)} ways would have been $${cents(least.totalUsd ?? 0)}: ${least.name}`;
  return known.length > 1 ? `${start}; ${said}.` : `${start}; ${least.name} makes it $${cents(least.totalUsd ?? 0)}.`;
}

/** A price of an index, as one types it. */
export const INDEX = { least: 0, most: 1000, such: '2.4335' };

/** Twelve typed prices for the question; null where none is typed, undefined where nothing is. */
export function typedIndex(typed: readonly string[]): (number | null)[] | undefined {
  const values = Array.from({ length: 12 }, (_, m) => {
    const { value, fault } = readNumber(typed[m] ?? '', INDEX);
    return fault === undefined ? value : null;
  });
  return values.some((v) => v !== null) ? values : undefined;
}
