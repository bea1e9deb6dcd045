import { dollars, figure, ofHundred } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import type { LoanAnswer, LoanCase } from './lending-queries.ts';
import { percent } from './lending-words.ts';

/** Where the money comes from and goes: the outlay of the study, the fees, and what covers them. */
export function sourcesAndUses(loan: LoanCase): { uses: [string, number][]; sources: [string, number][] } {
  const { terms } = loan;
  const outlay = loan.option?.result?.outlayUsd ?? loan.option?.outlayUsd ?? 0;
  const uses: [string, number][] = [
    [`outlay${loan.option ? `, ${loan.option.outlayBasis}` : ''}`, outlay],
    ...(terms.feeUsd > 0 ? [[`fees, ${terms.feeInAmount ? 'in the amount' : 'paid at the start'}`, terms.feeUsd] as [string, number]] : []),
  ];
  const told: [string, number][] = [
    ['loan', terms.amountUsd],
    ...(terms.grantUsd > 0 ? [[`grant, paid after ${String(terms.grantMonths)} months`, terms.grantUsd] as [string, number]] : []),
    ...(terms.downPaymentUsd > 0 ? [['down payment', terms.downPaymentUsd] as [string, number]] : []),
  ];
  const gap = uses.reduce((s, [, usd]) => s + usd, 0) - told.reduce((s, [, usd]) => s + usd, 0);
  return { uses, sources: Math.abs(gap) < 1 ? told : [...told, [gap > 0 ? 'covered by nothing' : 'raised beyond need', gap]] };
}

/** The month in which the borrower has most of its own money out. */
export function leastCash(answer: LoanAnswer) {
  return answer.cash.reduce<(typeof answer.cash)[number] | undefined>((most, m) => (most && most.ownUsd >= m.ownUsd ? most : m), undefined);
}

/** The price at which the savings pay the loan just so, in the unit chosen. */
export function breakEvenWords(answer: LoanAnswer, us: boolean): string {
  const b = answer.breakEven;
  if (b.middleMultiple === null || b.middleMultiple === undefined)
    return 'No price of fuel makes the savings pay it: nothing is saved on fuel.';
  const price = us ? `$${(b.priceUsdPerUnit ?? 0).toFixed(2)} a ${b.unit}` : `$${(b.priceUsdPerKwh ?? 0).toFixed(3)} a kWh`;
  const reckoned = us ? `$${b.reckonedPriceUsdPerUnit.toFixed(2)}` : `$${b.reckonedPriceUsdPerKwh.toFixed(3)}`;
  return `Half the futures pay it just so at ${percent(b.middleMultiple, 0)} of the fuel saving reckoned: on the index, fuel at ${price} instead of ${reckoned}.`;
}

const rows = (lines: readonly (readonly [string, number])[]) =>
  lines.map(([what, usd]) => (
    <tr key={what}>
      <td>{what}</td>
      <td className="n">{figure(usd, 5)}</td>
    </tr>
  ));

/** Sources and uses, cash of the first two years, and what would make the savings pay just so. */
export function LoanMoney({ loan, answer }: { loan: LoanCase; answer: LoanAnswer }) {
  const { units } = useUnits();
  const { uses, sources } = sourcesAndUses(loan);
  const least = leastCash(answer);
  const b = answer.breakEven;
  return (
    <section>
      <h2>The money</h2>
      <p className="caption">Outlay and fees, and what covers them, US dollars.</p>
      <table>
        <thead>
          <tr>
            <th scope="col">uses, then sources</th>
            <th scope="col" className="n">
              $
            </th>
          </tr>
        </thead>
        <tbody>
          {rows(uses)}
          <tr className="total">
            <td>all uses</td>
            <td className="n">
              {figure(
                uses.reduce((s, [, usd]) => s + usd, 0),
                5,
              )}
            </td>
          </tr>
          {rows(sources)}
        </tbody>
      </table>
      {least && (
        <p>
          The borrower has most of its own money out in <b>{least.name}</b>: <b>{dollars(least.ownUsd)}</b>, in a middling season, grant and
          payments in their months.
        </p>
      )}
      <p>
        {breakEvenWords(answer, units === 'us')} One future in ten asks{' '}
        {b.oneInTenMultiple === null || b.oneInTenMultiple === undefined
          ? 'more than any price gives'
          : `${percent(b.oneInTenMultiple, 0)} of it or more`}
        . Loan and running ask <b>{dollars(b.askedUsd)}</b> of fuel saved a season; <b>{dollars(b.reckonedUsd)}</b> is reckoned.
      </p>
    </section>
  );
}

/** What is short, how long, and what the lender may lose. */
export function Shortfalls({ loan, answer }: { loan: LoanCase; answer: LoanAnswer }) {
  const { terms } = loan;
  const runs = (answer.farm ?? answer.project).longestRunShare;
  return (
    <section>
      <h2>What is short, and what may be lost</h2>
      <p className="caption">
        {answer.farm ? 'From the whole farm’s cash after all term debt.' : 'From the savings alone, as if nothing else were paid in.'} A
        shortfall draws the operating line of {dollars(terms.operatingLineUsd)}, then the reserve of {dollars(terms.reserveUsd)}; beyond
        both the loan is in default.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">over all futures</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>
              Most seasons in a row under 1.0, {answer.farm ? 'farm' : 'project'} cover
              <span className="second">{runs.map((share, run) => `${String(run)}: ${ofHundred(share)} of 100`).join(', ')}</span>
            </td>
          </tr>
          <tr>
            <td>
              Greatest sum carried over after the line: middle <b>{dollars(answer.carriedUsd.p50)}</b>, one in ten over{' '}
              {dollars(answer.carriedUsd.p90)}, one in twenty over {dollars(answer.carriedUsd.p95)}
            </td>
          </tr>
          <tr>
            <td>
              Default in <b>{ofHundred(answer.defaultShare)} of 100</b> futures, give or take {(100 * answer.defaultHalfWidth).toFixed(1)}
            </td>
          </tr>
          <tr>
            <td>
              Expected loss <b>{dollars(answer.lossUsd.mean, 2)}</b>, one in twenty over {dollars(answer.lossUsd.p95, 2)}
              <span className="second">
                {percent(terms.lossGivenDefault)} of the balance, the lender’s own figure
                {terms.guaranteeShare > 0 ? `; the guarantor bears ${percent(terms.guaranteeShare)} of it` : '; no guarantee'}; not
                discounted
              </span>
            </td>
          </tr>
        </tbody>
      </table>
    </section>
  );
}
