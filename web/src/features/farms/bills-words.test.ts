import { expect, test } from 'vitest';
import { day, inUnit, lineCounts, sentence } from './bills-words.ts';

test('fuel is shown in the unit it is bought by', () => {
  expect(inUnit(26.7671 * 3984, 'PROPANE', 'us')).toBe(3980);
  // No. 2 oil: 138,690 and 137,381 Btu a gallon
  const later = { propaneBtuPerGallon: 91_452, oilBtuPerGallon: 137_381, pelletsBtuPerTon: 16_500_000 };
  expect(inUnit(40_646, 'FUEL_OIL', 'us')).toBe(1000);
  expect(inUnit(40_646, 'FUEL_OIL', 'us', later)).toBe(1010);
  expect(inUnit(1234.4, 'PROPANE', 'si')).toBe(1230);
});

test('days and sentences are written plainly', () => {
  expect(day('2024-02-07')).toBe('7 Feb 2024');
  expect(sentence('the house burns 30 % more than described')).toBe('The house burns 30 % more than described.');
});

test('every line of a record is counted once', () => {
  expect(lineCounts([{ use: 'USED' }, { use: 'USED' }, { use: 'HELD' }, { use: 'OPENS' }] as Parameters<typeof lineCounts>[0])).toBe(
    '2 count, 1 opens the account, 1 held',
  );
});
