import { expect, it } from 'vitest';
import { collateralWords } from './lending-words.ts';
import { noSecurity, securityInput, securityOf, worthOf } from './security.ts';

const kept = {
  collateralUsd: 42000,
  collateral: [
    { what: 'tractor', worthUsd: 30000, asOfOn: '2026-05-01' },
    { what: 'land', worthUsd: 12000, asOfOn: null },
  ],
  covenants: [{ words: 'statements of each year', dueOn: null }],
};

it('is shown as it was typed, adds its parts up and is sent again alike', () => {
  const typed = securityOf(kept);
  expect(worthOf(typed)).toBe(42000);
  expect(securityInput(typed)).toEqual({ collateral: kept.collateral, covenants: kept.covenants });
  expect(securityInput(noSecurity)).toEqual({ collateral: [], covenants: [] });
});

it('does not take a worth that nobody can read for nothing', () => {
  expect(securityInput({ ...noSecurity, collateral: [{ what: 'barn', worth: 'much', asOfOn: '' }] }).collateral[0]?.worthUsd).toBe(-1);
});

it('says the sum with its parts and their days', () => {
  expect(collateralWords(kept)).toBe('Collateral $42,000 (tractor $30,000 as of 2026-05-01; land $12,000).');
  expect(collateralWords({ collateralUsd: 0, collateral: [] })).toBe('Collateral: not on file.');
});
