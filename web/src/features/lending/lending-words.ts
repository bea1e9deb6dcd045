import type { LoanPayments, LoanState, RateKind, StressKind } from '../../lib/graphql/generated/graphql.ts';
import { dollars } from '../../lib/units/format.ts';

/** A cover ratio with two digits, as lenders say it. */
export const cover = (ratio: number): string => ratio.toFixed(2).replace('-', '−');

/** A ratio as the axis of a chart says it. */
export const coverTick = (ratio: number): string => ratio.toFixed(1).replace('-', '−');

/** A safe amount is never rounded up. */
export function floored(usd: number, digits = 3): number {
  const step = usd > 0 ? 10 ** Math.max(0, Math.floor(Math.log10(usd)) + 1 - digits) : 1;
  return Math.floor(usd / step) * step;
}

export const safeDollars = (usd: number | null | undefined): string => (usd === null || usd === undefined ? 'none' : dollars(floored(usd)));

export const percent = (share: number, digits = 2): string => `${String(Number((100 * share).toFixed(digits)))} %`;

/** Dollars and cents of a payment. */
export const payment = (usd: number): string => `$${usd.toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;

export const states: readonly (readonly [LoanState, string])[] = [
  ['ASKED', 'asked for'],
  ['LENT', 'lent'],
  ['DECLINED', 'declined'],
];
export const stateWords = (state: LoanState): string => states.find(([s]) => s === state)?.[1] ?? state;

export const paymentKinds: readonly (readonly [LoanPayments, string])[] = [
  ['MONTHLY', 'each month'],
  ['ANNUAL', 'once a year, in June after the spring sales'],
  ['SEASONAL', 'interest October to March, level April to September'],
];
export const perPayment: Record<LoanPayments, string> = {
  MONTHLY: 'a month',
  ANNUAL: 'each June',
  SEASONAL: 'a month, April to September',
};

export const rateKinds: readonly (readonly [RateKind, string])[] = [
  ['FIXED', 'fixed'],
  ['INDEXED', 'index and margin'],
];

/** What each stress does, and the cover that it is meant to hurt. */
export const stressWords: Record<StressKind, readonly [string, string]> = {
  AS_DRAWN: ['As drawn', 'nothing goes wrong but what the futures hold'],
  CHEAP_AND_MILD: ['Fuel 40 % cheaper, two warmest winters', 'little is saved: hurts the project'],
  DEAR_AND_HARD: ['Fuel twice as dear, two coldest winters', 'the bill is highest: hurts the farm'],
  RATE_UP: ['Index up 3 points', 'from the first reset'],
  HALF_THE_SAVING: ['Half the saving', 'running costs stay'],
  GRANT_REFUSED: ['Grant refused', 'lent on top instead'],
  MARGIN_DOWN: ['Sales margin 15 % lower', 'in every season: hurts the farm'],
};

export const notApplying: Partial<Record<StressKind, string>> = {
  RATE_UP: 'the rate is fixed',
  GRANT_REFUSED: 'no grant is counted on',
  MARGIN_DOWN: 'no statements',
};

export const SAVINGS_ONLY = 'Savings only, not a credit decision';

/** What secures a loan: "Collateral $42,000 (tractor $30,000 as of 2026-05-01; land $12,000)." */
export const collateralWords = (c: {
  collateralUsd: number;
  collateral: readonly { what: string; worthUsd: number; asOfOn?: string | null }[];
}): string =>
  c.collateral.length === 0
    ? 'Collateral: not on file.'
    : `Collateral ${dollars(c.collateralUsd, 5)} (${c.collateral.map((p) => `${p.what} ${dollars(p.worthUsd, 5)}${p.asOfOn ? ` as of ${p.asOfOn}` : ''}`).join('; ')}).`;
