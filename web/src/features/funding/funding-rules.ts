import { useSearchParams } from 'react-router';
import type { Expected } from '../../lib/units/typed-number.ts';
import type { FundingRulesInput, GradeCRule } from '../../lib/graphql/generated/graphql.ts';
import type { Round } from './round-query.ts';

export const usual = {
  budgetUsd: 50000,
  reserveShare: 10,
  costShare: 60,
  houseCapUsd: 9000,
  farmCapUsd: 14000,
  paybackSeasons: 10,
  confidence: 60,
  publicShare: 100,
  minimumGrantUsd: 250,
  partialShare: 100,
  lotSeed: 1,
};
export type Rule = keyof typeof usual;

export const ruleNames: Record<Rule, string> = {
  budgetUsd: 'budget, dollars',
  reserveShare: 'held back, percent',
  costShare: 'share of the cost a grant covers, percent',
  houseCapUsd: 'most a house gets, dollars',
  farmCapUsd: 'most a farm gets, dollars',
  paybackSeasons: 'season by which it must be paid back',
  confidence: 'of 100 futures in which it must be',
  publicShare: 'most of the cost that all public money covers, percent',
  minimumGrantUsd: 'smallest grant, dollars',
  partialShare: 'smallest part of a grant that is still offered, percent',
  lotSeed: 'seed of the drawn lot',
};

const money: Expected = { least: 0, most: 1e9 };
const percent: Expected = { least: 0, most: 100 };
/** What each rule takes. */
export const ruleLimits: Record<Rule, Expected> = {
  budgetUsd: money,
  reserveShare: percent,
  costShare: percent,
  houseCapUsd: money,
  farmCapUsd: money,
  paybackSeasons: { least: 1, most: 30, whole: true },
  confidence: percent,
  publicShare: percent,
  minimumGrantUsd: money,
  partialShare: percent,
  lotSeed: { least: 0, most: 2 ** 53 - 1, whole: true },
};

export const merits = {
  NET_SAVING: 'saves members most',
  ENERGY: 'saves most heat',
  CO_2: 'saves most CO₂',
  BAD_YEARS: 'saves members most where it saves least',
} as const;
export type MeritName = keyof typeof merits;

/** What the committee set aside from the order: an option pinned or left out, with its reason. */
export interface Choice {
  houseId: string;
  optionKey: string;
  reason: string;
}

const read = (text: string): Choice => {
  const [houseId = '', optionKey = '', ...reason] = text.split('~');
  return { houseId, optionKey, reason: reason.join('~') || 'no reason told' };
};
const write = (c: Choice): string => `${c.houseId}~${c.optionKey}~${c.reason}`;

/** A grant that the committee set, with its reason. */
export interface SetAmount extends Choice {
  grantUsd: number;
}

/** A group, the share of the money kept for it and its own cost share, in percent. */
export interface Group {
  name: string;
  minimum: number;
  cost: number | null;
}

const readAmount = (text: string): SetAmount => {
  const [houseId = '', optionKey = '', usd = '', ...reason] = text.split('~');
  return { houseId, optionKey, grantUsd: Number(usd), reason: reason.join('~') || 'no reason told' };
};
const readGroup = (text: string): Group => {
  const [name = '', minimum = '0', cost = ''] = text.split('~');
  return { name, minimum: Number(minimum), cost: cost === '' ? null : Number(cost) };
};
const inPercent = (share: number): string => String(Math.round(share * 1e6) / 1e4);

/** The rules of a kept round as the address of the page that changes them. */
export function addressOf(round: Round): string {
  const r = round.rules;
  const p = new URLSearchParams({ round: round.id, merit: r.merit, gradeC: r.gradeC });
  for (const name of ['budgetUsd', 'houseCapUsd', 'farmCapUsd', 'paybackSeasons', 'minimumGrantUsd', 'lotSeed'] as const)
    p.set(name, String(r[name]));
  for (const name of ['reserveShare', 'costShare', 'confidence', 'publicShare', 'partialShare'] as const) p.set(name, inPercent(r[name]));
  if (r.memberByOn) p.set('memberBy', r.memberByOn);
  if (r.groupMoneyHeld) p.set('held', '1');
  if (r.retrofitCodes.length > 0) p.set('codes', r.retrofitCodes.join(' '));
  r.tests.forEach((t) => p.append('test', t));
  r.groups.forEach((g) => p.append('group', `${g.name}~${inPercent(g.minimumShare)}~${g.costShare ? inPercent(g.costShare) : ''}`));
  r.pinned.forEach((c) => p.append('pin', write({ ...c, optionKey: c.optionKey ?? '' })));
  r.excluded.forEach((c) => p.append('out', write({ ...c, optionKey: c.optionKey ?? '' })));
  r.amounts.forEach((a) => p.append('amount', `${a.houseId}~${a.optionKey}~${String(a.grantUsd)}~${a.reason}`));
  return p.toString();
}

/** The rules of the round stand in the address, so a link opens the same view. */
export function useRules() {
  const [params, setParams] = useSearchParams();
  const value = (name: Rule) => Number(params.get(name) ?? usual[name]);
  const merit = (params.get('merit') ?? 'NET_SAVING') as MeritName;
  const change = (edit: (p: URLSearchParams) => void) => {
    const next = new URLSearchParams(params);
    edit(next);
    setParams(next, { replace: true });
  };
  const choices = (name: 'pin' | 'out') => params.getAll(name).map(read);
  const groups = params.getAll('group').map(readGroup);
  const amounts = params.getAll('amount').map(readAmount);
  const input: FundingRulesInput = {
    budgetUsd: value('budgetUsd'),
    reserveShare: value('reserveShare') / 100,
    costShare: value('costShare') / 100,
    houseCapUsd: value('houseCapUsd'),
    farmCapUsd: value('farmCapUsd'),
    paybackSeasons: value('paybackSeasons'),
    confidence: value('confidence') / 100,
    merit,
    pinned: choices('pin').map((c) => ({ ...c, optionKey: c.optionKey || null })),
    excluded: choices('out').map((c) => ({ ...c, optionKey: c.optionKey || null })),
    publicShare: value('publicShare') / 100,
    minimumGrantUsd: value('minimumGrantUsd'),
    partialShare: value('partialShare') / 100,
    lotSeed: value('lotSeed'),
    gradeC: (params.get('gradeC') ?? 'ON_BILLS') as GradeCRule,
    memberByOn: params.get('memberBy') || null,
    groupMoneyHeld: params.get('held') === '1',
    retrofitCodes: (params.get('codes') ?? '').split(' ').filter((c) => c !== ''),
    tests: params.getAll('test'),
    groups: groups.map((g) => ({ name: g.name, minimumShare: g.minimum / 100, costShare: g.cost === null ? null : g.cost / 100 })),
    amounts,
  };
  return {
    roundId: params.get('round'),
    groups,
    amounts,
    tests: params.getAll('test'),
    plain: (name: string) => params.get(name) ?? '',
    addGroup: (g: Group) => change((p) => p.append('group', `${g.name}~${String(g.minimum)}~${g.cost === null ? '' : String(g.cost)}`)),
    addTest: (words: string) => change((p) => p.append('test', words)),
    addAmount: (a: SetAmount) => change((p) => p.append('amount', `${a.houseId}~${a.optionKey}~${String(a.grantUsd)}~${a.reason}`)),
    drop: (name: 'group' | 'test' | 'amount', no: number) =>
      change((p) => {
        const kept = p.getAll(name).filter((_, i) => i !== no);
        p.delete(name);
        kept.forEach((t) => p.append(name, t));
      }),
    input,
    merit,
    value,
    pinned: choices('pin'),
    excluded: choices('out'),
    set: (name: string, to: string) => change((p) => p.set(name, to)),
    add: (name: 'pin' | 'out', c: Choice) => change((p) => p.append(name, write(c))),
    remove: (name: 'pin' | 'out', c: { houseId: string; optionKey: string }) =>
      change((p) => {
        const kept = p.getAll(name).filter((t) => read(t).houseId !== c.houseId || read(t).optionKey !== c.optionKey);
        p.delete(name);
        kept.forEach((t) => p.append(name, t));
      }),
  };
}

export type Rules = ReturnType<typeof useRules>;
