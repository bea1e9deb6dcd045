import { expect, it } from 'vitest';
import { outWords } from './houses-out.ts';

it('says why fewer houses take part than the co-op has', () => {
  expect(outWords(35, { houseCount: 42, byRule: 4, withoutOutlay: 2, notStudied: 1 })).toBe(
    'Of 42 houses 35 take part; the others: 4 kept out by a rule, as told below, 2 with no option that costs anything to build, 1 not in the newest study.',
  );
  expect(outWords(40, { houseCount: 42, byRule: 0, withoutOutlay: 2, notStudied: 0 })).toBe(
    'Of 42 houses 40 take part; the others: 2 with no option that costs anything to build.',
  );
  expect(outWords(42, { houseCount: 42, byRule: 0, withoutOutlay: 0, notStudied: 0 })).toBe('');
});
