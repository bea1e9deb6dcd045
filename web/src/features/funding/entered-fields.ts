import type { EnteredAwardInput, EnteredRoundInput } from '../../lib/graphql/generated/graphql.ts';
import { MMBTU_KWH, type UnitSystem } from '../../lib/units/format.ts';
import { turnedHeat } from '../../lib/units/turned.ts';
import { readNumber } from '../../lib/units/typed-number.ts';
import type { Entered, EnteredAward } from './entered-query.ts';

/** An award as it is typed; fuel in MMBtu or MWh, shares in per cent. */
export interface TypedAward {
  key: string;
  id?: string;
  revision?: number;
  houseId: string;
  part: string;
  also: string;
  grant: string;
  outlay: string;
  paid: string;
  installedOn: string;
  promised: string;
  promisedLow: string;
  promisedHigh: string;
  share: string;
  low: string;
  high: string;
  words: string;
}

export interface TypedRound {
  name: string;
  decidedOn: string;
  rulesInShort: string;
  budget: string;
  awards: TypedAward[];
}

let made = 0;
export const emptyAward = (): TypedAward => ({
  key: `new${String((made += 1))}`,
  houseId: '',
  part: 'curtain',
  also: '',
  grant: '',
  outlay: '',
  paid: '',
  installedOn: '',
  promised: '',
  promisedLow: '',
  promisedHigh: '',
  share: '',
  low: '',
  high: '',
  words: '',
});

export const emptyRound = (): TypedRound => ({ name: '', decidedOn: '', rulesInShort: '', budget: '', awards: [emptyAward()] });

const kwhPer = (u: UnitSystem) => (u === 'us' ? MMBTU_KWH : 1000);
const typedHeat = (kwh: number | null | undefined, u: UnitSystem) =>
  kwh === null || kwh === undefined ? '' : String(Number((kwh / kwhPer(u)).toFixed(3)));

const awardOf = (a: EnteredAward, u: UnitSystem): TypedAward => ({
  ...emptyAward(),
  key: a.id,
  id: a.id,
  revision: a.revision,
  houseId: a.houseId,
  part: a.parts[0] ?? '',
  also: a.parts[1] ?? '',
  grant: String(a.grantCapUsd),
  outlay: String(a.outlayUsd),
  paid: a.paidUsd === 0 ? '' : String(a.paidUsd),
  promised: typedHeat(a.promisedKwh, u),
  promisedLow: typedHeat(a.promisedLowKwh, u),
  promisedHigh: typedHeat(a.promisedHighKwh, u),
});

/** A kept round as one would have typed it. */
export const roundOf = (r: Entered, u: UnitSystem): TypedRound => ({
  name: r.name,
  decidedOn: r.enteredDecidedOn ?? '',
  rulesInShort: r.rulesInShort ?? '',
  budget: String(r.rules.budgetUsd),
  awards: r.awards.map((a) => awardOf(a, u)),
});

/** What is typed of fuel, turned with the units. */
export const turnedRound = (t: TypedRound, from: UnitSystem, to: UnitSystem): TypedRound => ({
  ...t,
  awards: t.awards.map((a) => ({
    ...a,
    promised: turnedHeat(a.promised, from, to),
    promisedLow: turnedHeat(a.promisedLow, from, to),
    promisedHigh: turnedHeat(a.promisedHigh, from, to),
  })),
});

const number = (text: string): number | null => readNumber(text).value;

/** What is sent. The share delivered goes with a new award alone; later it is followed on the award's own page. */
export function inputOf(t: TypedRound, u: UnitSystem, requestId: string, known?: { id: string; revision: number }): EnteredRoundInput {
  const kwh = (text: string) => {
    const n = number(text);
    return n === null ? null : n * kwhPer(u);
  };
  const share = (text: string) => (number(text) ?? Number.NaN) / 100;
  const award = (a: TypedAward): EnteredAwardInput => ({
    id: a.id ?? null,
    expectedRevision: a.revision ?? null,
    houseId: a.houseId,
    parts: [a.part, a.also].filter((p) => p !== ''),
    grantUsd: number(a.grant) ?? 0,
    outlayUsd: number(a.outlay),
    paidUsd: number(a.paid),
    installedOn: a.installedOn || null,
    promisedKwh: kwh(a.promised),
    promisedLowKwh: kwh(a.promisedLow),
    promisedHighKwh: kwh(a.promisedHigh),
    delivered: a.id || a.share.trim() === '' ? null : { share: share(a.share), low: share(a.low), high: share(a.high), words: a.words },
  });
  return {
    id: known?.id ?? null,
    expectedRevision: known?.revision ?? null,
    requestId,
    name: t.name,
    decidedOn: t.decidedOn,
    rulesInShort: t.rulesInShort || null,
    budgetUsd: number(t.budget),
    awards: t.awards.map(award),
  };
}

/** What still lacks before it can be sent, in words. */
export const lacks = (t: TypedRound): (string | false)[] => [
  t.name.trim() === '' && 'a name',
  t.decidedOn === '' && 'the day it was decided',
  t.awards.some((a) => a.houseId === '') && 'a house for every award',
  t.awards.some((a) => !(Number(number(a.grant)) > 0)) && 'a grant for every award',
  t.awards.some((a) => !a.id && a.share.trim() !== '' && (number(a.low) === null || number(a.high) === null)) &&
    'both ends of what was delivered',
];
