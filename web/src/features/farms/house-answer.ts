import { ofHundred } from '../../lib/units/format.ts';

interface Judged {
  title: string;
  result?: {
    outlayUsd: number;
    npvUsd: { p50: number };
    lastingPayback: { p50Season?: number | null; neverShare: number };
  } | null;
}

/** What the heading says of the options: the one worth most, none of several, or nothing where none was studied. */
export type Answer<T> = { kind: 'best'; option: T } | { kind: 'none'; count: number } | { kind: 'unknown' };

/** The option worth most over the horizon in the middle future, of those that need an outlay; none where even it is worth less than nothing or is never paid back there. */
export function answerOf<T extends Judged>(options: readonly T[]): Answer<T> {
  const judged = options.filter((o) => (o.result?.outlayUsd ?? 0) > 0);
  const pays = judged.filter((o) => o.result && o.result.npvUsd.p50 > 0 && o.result.lastingPayback.p50Season != null);
  const [first, ...others] = pays;
  if (first) return { kind: 'best', option: others.reduce((a, b) => (worth(b) > worth(a) ? b : a), first) };
  return judged.length > 0 ? { kind: 'none', count: judged.length } : { kind: 'unknown' };
}

const worth = (o: Judged): number => o.result?.npvUsd.p50 ?? -Infinity;

/** "never in 12 of 100 futures", or that it is paid back in all of them. */
export const neverWords = (share: number): string =>
  share === 0 ? 'in every future reckoned' : `never in ${ofHundred(share)} of 100 futures`;
