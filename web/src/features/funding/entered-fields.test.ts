import { expect, it } from 'vitest';
import { emptyAward, emptyRound, inputOf, lacks, roundOf } from './entered-fields.ts';

it('sends fuel in kWh, shares for per cents and leaves empty fields out', () => {
  const typed = {
    ...emptyRound(),
    name: 'Round of 2019',
    decidedOn: '2019-03-05',
    awards: [
      { ...emptyAward(), houseId: 'h', also: 'seal', grant: '$4,000', promised: '10', share: '80', low: '60', high: '100', words: 'bills' },
    ],
  };
  expect(lacks(typed).filter(Boolean)).toEqual([]);
  const { awards, budgetUsd, id } = inputOf(typed, 'us', 'r');
  expect([budgetUsd, id]).toEqual([null, null]);
  const [award] = [...(Array.isArray(awards) ? awards : [awards])];
  expect(award).toMatchObject({ parts: ['curtain', 'seal'], grantUsd: 4000, outlayUsd: null, promisedLowKwh: null });
  expect(award?.promisedKwh).toBeCloseTo(2930.71, 2);
  expect(award?.delivered).toEqual({ share: 0.8, low: 0.6, high: 1, words: 'bills' });
});

it('shows a kept round as it was typed, and sends nothing delivered for what is on record', () => {
  const kept = {
    id: 'fo',
    revision: 2,
    name: 'Old',
    state: 'ENTERED' as const,
    enteredDecidedOn: '2018-02-01',
    rulesInShort: null,
    rules: { budgetUsd: 500 },
    awards: [
      {
        id: 'aw',
        revision: 3,
        farm: 'Farm',
        house: 'house 1',
        houseId: 'h',
        title: 'Curtain',
        parts: ['curtain'],
        state: 'offered',
        grantCapUsd: 500,
        outlayUsd: 900,
        paidUsd: 0,
        promisedKwh: 2000,
        promisedLowKwh: null,
        promisedHighKwh: null,
        verified: null,
      },
    ],
  };
  const typed = roundOf(kept, 'si');
  expect(typed.awards[0]).toMatchObject({ promised: '2', grant: '500', paid: '', also: '' });
  const [award] = [inputOf(typed, 'si', 'r', { id: 'fo', revision: 2 }).awards].flat();
  expect(award).toMatchObject({ id: 'aw', expectedRevision: 3, delivered: null, promisedKwh: 2000 });
});

it('says what lacks', () => {
  expect(lacks(emptyRound()).filter(Boolean)).toEqual([
    'a name',
    'the day it was decided',
    'a house for every award',
    'a grant for every award',
  ]);
});
