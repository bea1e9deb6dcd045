import { useSearchParams } from 'react-router';
import type { Expected } from '../../lib/units/typed-number.ts';
import type { FundingRulesInput } from '../../lib/graphql/generated/graphql.ts';

export const usual = {
  budgetUsd: 50000,
  reserveShare: 10,
  costShare: 60,
  houseCapUsd: 9000,
  farmCapUsd: 14000,
  paybackSeasons: 10,
  confidence: 60,
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
  const input: FundingRulesInput = {
    budgetUsd: value('budgetUsd'),
    reserveShare: value('reserveShare') / 100,
    costShare: value('costShare') / 100,
    houseCapUsd: value('houseCapUsd'),
    farmCapUsd: value('farmCapUsd'),
    paybackSeasons: value('paybackSeasons'),
    confidence: value('confidence') / 100,
    merit,
    pinned: choices('pin'),
    excluded: choices('out'),
  };
  return {
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
