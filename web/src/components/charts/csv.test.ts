import { expect, it } from 'vitest';
import { csvOf } from './csv.ts';

it('quotes every cell and doubles quotes', () => {
  expect(
    csvOf([
      ['season', 'say "much"'],
      ['2026', 1.5],
    ]),
  ).toBe('"season","say ""much"""\r\n"2026","1.5"');
});
it.each(['=1+1', '+cmd', '-2+3', '@SUM(A1)', '\t=1', '=HYPERLINK("x")'])(
  'leads %j by an apostrophe, so that no spreadsheet runs it',
  (text) => {
    expect(csvOf([[text]])).toBe(`"'${text.replaceAll('"', '""')}"`);
  },
);
it.each(['-1,250', '-0.5', '+3', '-12 %', '1e-5'])('leaves the number %j as it is', (text) => {
  expect(csvOf([[text]])).toBe(`"${text}"`);
});
