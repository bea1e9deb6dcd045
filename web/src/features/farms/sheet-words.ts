import { dollars, ofHundred, significant, unitIn, usdPerUnitIn, type UnitSystem } from '../../lib/units/format.ts';
import { answerOf } from './house-answer.ts';

/** A range of money as words, the low end first. */
export const fromTo = (d: { p10: number; p90: number }): string => `${dollars(d.p10)} to ${dollars(d.p90)}`;

/** Middle with its range: "$1,240 (one in ten under $700, one in ten over $1,900)". */
export const withRange = (d: { p10: number; p50: number; p90: number }): string =>
  `${dollars(d.p50)} (one in ten under ${dollars(d.p10)}, one in ten over ${dollars(d.p90)})`;

interface Offered {
  id: string;
  key: string;
  title: string;
  parts: readonly string[];
  isRunningChange: boolean;
  result?: {
    outlayUsd: number;
    npvUsd: { p50: number };
    savingUsd: { p50: number };
    lastingPayback: { p50Season?: number | null; neverShare: number };
  } | null;
}

/** The work the sheet is about: the one asked for, else the one that a grant was given for, else the one worth most, else the first studied that asks an outlay. */
export function offered<T extends Offered>(options: readonly T[], asked: string | null, awarded: readonly string[]): T | undefined {
  const named = options.find((o) => o.key === asked && o.parts.length > 0);
  if (named) return named;
  const granted = options.find((o) => awarded.includes(o.id));
  if (granted) return granted;
  const best = answerOf(options);
  return best.kind === 'best' ? best.option : options.find((o) => o.result && !o.isRunningChange && o.parts.length > 0);
}

/** Cheaper works to do first: those that cost nothing to begin, sealing and service, the most saving first. */
export const cheaper = <T extends Offered>(options: readonly T[], than: T | undefined): T[] =>
  options
    .filter((o) => o.key !== than?.key && o.result && o.result.savingUsd.p50 > 0)
    .filter((o) => o.isRunningChange || (o.parts.length === 1 && ['seal', 'service'].includes(o.parts[0] ?? '')))
    .sort((a, b) => (b.result?.savingUsd.p50 ?? 0) - (a.result?.savingUsd.p50 ?? 0));

/** "by winter 6 in the middle, by winter 9 in nine of ten futures; never in 4 of 100". */
export function paybackWords(p: { p50Season?: number | null; p90Season?: number | null; neverShare: number }): string {
  const middle = p.p50Season ? `by winter ${String(p.p50Season)} in the middle of all futures` : 'in under half of the futures';
  const most = p.p90Season ? `, by winter ${String(p.p90Season)} in nine of ten` : ', not in nine of ten';
  return `${middle}${most}; never in ${ofHundred(p.neverShare)} of 100`;
}

/** What a running cost is of, in two digits: " (0.5 h/week)"; nothing where it is a sum alone. */
export const quantityWords = (quantity: number | null | undefined, unit: string | null | undefined): string =>
  quantity && unit ? ` (${significant(quantity, 2).toLocaleString('en-US')} ${unit})` : '';

/** A season's fuel with its range, in the unit it is bought by: it spreads as the heat does. */
export function fuelRange(units: number, unit: string, heat: { mean: number; p10: number; p90: number }, u: UnitSystem): string {
  const [low, high] = [heat.p10, heat.p90].map((k) => significant(((units * k) / Math.max(heat.mean, 1e-9)) * holds(unit, u), 3));
  return `${(low ?? 0).toLocaleString('en-US')} to ${(high ?? 0).toLocaleString('en-US')} ${unitIn(unit, u)}`;
}

const holds = (unit: string, u: UnitSystem): number => 1 / usdPerUnitIn(1, unit, u);
