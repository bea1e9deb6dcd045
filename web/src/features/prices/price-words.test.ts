import { expect, it } from 'vitest';
import { matrixOf } from './correlation-pairs.ts';
import { asTold, asTyped, paidBack, trialOf } from './price-words.ts';

it('takes per cent for growth, volatility and the long-term share and plain numbers else', () => {
  expect(asTold('volatilityPerYear', '40')).toBe(0.4);
  expect(asTold('growthPerYear', '2 %')).toBe(0.02);
  expect(asTold('shortReversionPerYear', '0.7')).toBe(0.7);
  expect(asTyped('longShare', 0.7)).toBe('70');
  expect(asTyped('levelUsdPerUnit', null)).toBe('');
});

it('leaves an empty field to the default and sends nothing while one holds no number', () => {
  expect(trialOf('PROPANE', 'MIDDLE', { growthPerYear: '', longShare: '60' })).toEqual({
    fuel: 'PROPANE',
    levelMeaning: 'MIDDLE',
    growthPerYear: null,
    longShare: 0.6,
  });
  expect(trialOf('PROPANE', 'MIDDLE', { growthPerYear: 'much' })).toBeUndefined();
});

it('says never where half the futures do not pay', () => {
  expect(paidBack(null)).toBe('never');
  expect(paidBack(6)).toBe('season 6');
});

it('lays six pairs out as a symmetric matrix with ones on the diagonal', () => {
  const m = matrixOf(['0.1', '0.2', '0.3', '0.4', '0.5', '0.6']);
  expect(m).toEqual([1, 0.1, 0.2, 0.3, 0.1, 1, 0.4, 0.5, 0.2, 0.4, 1, 0.6, 0.3, 0.5, 0.6, 1]);
  expect(matrixOf(['', '0.2', '0.3', '0.4', '0.5', '0.6'])).toBeUndefined();
});
