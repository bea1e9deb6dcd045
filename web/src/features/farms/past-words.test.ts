import { describe, expect, it } from 'vitest';
import type { PastFragment } from '../../lib/graphql/generated/graphql.ts';
import { answer, months, typedIndex } from './past-words.ts';

const way = (name: string, totalUsd: number | null, monthsUsd: number[] = []) =>
  ({ key: name, name, unit: 'gal', totalUsd, monthsUsd, seasonEndUsd: 0, stillOwnUnits: 0, creditUsd: 0, lines: [], faults: [] }) as Way;
type Way = PastFragment['ways'][number];
const past = (ways: Way[]): PastFragment => ({
  season: 2022,
  name: '2022-23',
  unit: 'gal',
  indexName: 'a record',
  seasons: [2022],
  paidUsd: 3797.7,
  notes: [],
  months: [
    { month: '2022-07', units: 0, deliveries: 0, paidUsd: null, indexUsdPerUnit: 2, indexIsTyped: false },
    { month: '2022-08', units: 0, deliveries: 0, paidUsd: null, indexUsdPerUnit: 2, indexIsTyped: false },
    { month: '2022-09', units: 1603.5, deliveries: 4, paidUsd: 3797.7, indexUsdPerUnit: 2, indexIsTyped: false },
  ],
  ways,
});

describe('a past season in words', () => {
  it('names the least of the ways that could be settled, to the cent', () => {
    expect(answer(past([way('the index alone', 3797.72), way('fixed', 3672.02), way('no price', null)]))).toBe(
      'In 2022-23 you bought 1,603.5 gal for $3,797.70; the least of 2 ways would have been $3,672.02: fixed.',
    );
  });

  it('keeps months that hold money though no fuel', () => {
    expect(months(past([way('rent', 10, [0, 8.33, 0])])).map((m) => m.month)).toEqual(['2022-08', '2022-09']);
  });

  it('asks with the prices typed alone', () => {
    expect(typedIndex(['', '2.5', 'x', '-1'])).toEqual([null, 2.5, ...Array.from({ length: 10 }, () => null)]);
    expect(typedIndex(['', ' '])).toBeUndefined();
  });
});
