import { expect, it } from 'vitest';
import { matrixOf } from './correlation-pairs.ts';
import { asTold, asTyped, paidBack, trialOf, turnedKnobs, unitOf } from './price-words.ts';

const level = { field: 'levelUsdPerUnit', unit: '$/gal' };
const growth = { field: 'growthPerYear', unit: '1/a' };
const volatility = { field: 'volatilityPerYear', unit: '1' };
const share = { field: 'longShare', unit: '1' };

it('takes per cent for growth, volatility and the long-term share and plain numbers else', () => {
  expect(asTold(volatility, '40', 'us')).toBe(0.4);
  expect(asTold(growth, '2 %', 'si')).toBe(0.02);
  expect(asTold({ field: 'shortReversionPerYear', unit: '1/a' }, '0.7', 'si')).toBe(0.7);
  expect(asTyped(share, 0.7, 'us')).toBe('70');
  expect(asTyped(level, null, 'us')).toBe('');
});

it('tells and takes a price level a litre under SI, and leaves one alone that nobody touched', () => {
  // 3.785 L a gallon: $2.46 a gallon is $0.65 a litre
  expect(unitOf(level, 'us')).toBe('$ a gal');
  expect(unitOf(level, 'si')).toBe('$ a L');
  expect(asTyped(level, 2.46, 'si')).toBe('0.6499');
  expect(asTold(level, '0.65', 'si')).toBeCloseTo(2.4605, 4);
  const own = { ...level, own: 2.46 };
  expect(trialOf('PROPANE', 'MIDDLE', [own], { levelUsdPerUnit: '0.6499' }, 'si')?.levelUsdPerUnit).toBe(2.46);
  expect(trialOf('PROPANE', 'MIDDLE', [own], { levelUsdPerUnit: '0.70' }, 'si')?.levelUsdPerUnit).toBeCloseTo(2.6498, 4);
});

it('turns what stands typed with the system of units and loses nothing of it', () => {
  const knobs = [level, growth, share];
  const typed = { levelUsdPerUnit: '2.65', growthPerYear: '2', longShare: 'much' };
  expect(turnedKnobs(knobs, typed, 'us', 'si')).toEqual({ levelUsdPerUnit: '0.7001', growthPerYear: '2', longShare: 'much' });
  expect(turnedKnobs([level], { levelUsdPerUnit: '' }, 'us', 'si')).toEqual({ levelUsdPerUnit: '' });
});

it('leaves an empty field to the default and sends nothing while one holds no number', () => {
  expect(
    trialOf(
      'PROPANE',
      'MIDDLE',
      [
        { ...growth, own: 0.03 },
        { ...share, own: null },
      ],
      { growthPerYear: '', longShare: '60' },
      'us',
    ),
  ).toEqual({
    fuel: 'PROPANE',
    levelMeaning: 'MIDDLE',
    growthPerYear: null,
    longShare: 0.6,
  });
  expect(trialOf('PROPANE', 'MIDDLE', [{ ...growth, own: null }], { growthPerYear: 'much' }, 'us')).toBeUndefined();
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
