import { expect, it } from 'vitest';
import { titleOf } from './page-title.ts';

it('names the document after its page', () => {
  expect(titleOf('/')).toBe('Overview - FarmPortfolio');
  expect(titleOf('/funding')).toBe('Funding - FarmPortfolio');
  expect(titleOf('/houses')).toBe('Houses - FarmPortfolio');
  expect(titleOf('/houses/new')).toBe('New house - FarmPortfolio');
  expect(titleOf('/houses/h1')).toBe('House - FarmPortfolio');
  expect(titleOf('/farms/f1')).toBe('Farm - FarmPortfolio');
  expect(titleOf('/fuel/prices')).toBe('Fuel prices - FarmPortfolio');
  expect(titleOf('/loans')).toBe('Loans - FarmPortfolio');
  expect(titleOf('/loans/book')).toBe('Loan book - FarmPortfolio');
  expect(titleOf('/loans/lc1')).toBe('Loan case - FarmPortfolio');
  expect(titleOf('/rounds/fo1/memo')).toBe('Round - FarmPortfolio');
  expect(titleOf('/awards')).toBe('Awards - FarmPortfolio');
  expect(titleOf('/nowhere')).toBe('No such page - FarmPortfolio');
});
