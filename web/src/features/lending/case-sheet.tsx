import type { LoanStressesQuery } from '../../lib/graphql/generated/graphql.ts';
import { dollars, ofHundred } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import type { CoverFigures, LoanAnswer, LoanCase } from './lending-queries.ts';
import {
  collateralWords,
  cover,
  payment,
  paymentKinds,
  percent,
  perPayment,
  safeDollars,
  SAVINGS_ONLY,
  stateWords,
  stressWords,
} from './lending-words.ts';
import { breakEvenWords, leastCash, sourcesAndUses } from './loan-money.tsx';
import { Point } from '../../components/sheet-point.tsx';

interface Props {
  loan: LoanCase;
  answer: LoanAnswer;
  stresses: NonNullable<LoanStressesQuery['loanCase']>['stresses'];
  inBook: NonNullable<LoanStressesQuery['loanCase']>['inBook'] | undefined;
  study: { number: number; askedAt: string; evidenceUsed: readonly string[] } | undefined;
  coop: string;
  version: string;
}

/** One page for the credit file; seen on paper only. */
export function CaseSheet({ loan, answer, stresses, inBook, study, coop, version }: Props) {
  const { units } = useUnits();
  const { terms } = loan;
  const { uses, sources } = sourcesAndUses(loan);
  const least = leastCash(answer);
  const said = (lines: readonly (readonly [string, number])[]) => lines.map(([what, usd]) => `${what} ${dollars(usd, 5)}`).join('; ');
  const at = (q: number) => answer.largest.find((l) => l.confidence === q);
  return (
    <article className="case-sheet">
      <h2>
        Loan case: {loan.farm?.name}, {loan.name}
      </h2>
      <p className="sentence">
        In {ofHundred(answer.project.underOneShare)} of 100 futures the savings miss the payment in some season
        {answer.farm ? `, and the farm as a whole in ${ofHundred(answer.farm.underOneShare)} of 100` : ''}; the safe loan at 95 % is{' '}
        {safeDollars(at(0.95)?.projectUsd)} by the savings{answer.farm ? ` and ${safeDollars(at(0.95)?.farmUsd)} by the farm` : ''}.
      </p>
      <div className="columns">
        <Point no={1} name="Borrower and purpose">
          {loan.farm?.name}
          {loan.farm?.place ? `, ${loan.farm.place}` : ''}; {loan.house?.name}: {loan.option?.title}. Amount {dollars(terms.amountUsd, 5)},{' '}
          {stateWords(terms.state)}. {terms.guaranteeShare > 0 ? `Guarantee ${percent(terms.guaranteeShare)} of a loss.` : 'No guarantee.'}{' '}
          {collateralWords(loan)}
        </Point>
        <Point no={2} name="Sources and uses">
          Uses: {said(uses)}. Sources: {said(sources)}.
        </Point>
        <Point no={3} name="Terms">
          {percent(terms.rateNow)}{' '}
          {terms.rateKind === 'FIXED'
            ? 'fixed'
            : `indexed (${percent(terms.indexPerYear)} + ${percent(terms.marginPerYear)}), set anew every ${String(terms.resetMonths)} months`}
          ; {terms.termYears} years, {paymentKinds.find(([k]) => k === terms.payments)?.[1]}: {payment(answer.paymentUsd)}{' '}
          {perPayment[terms.payments]}; 30/360.{' '}
          {terms.deferralMonths > 0
            ? `Principal deferred ${String(terms.deferralMonths)} months, interest ${terms.deferredInterest === 'PAID' ? 'paid' : 'added'}.`
            : ''}{' '}
          Life of the parts {loan.option?.lifeYears?.toFixed(1) ?? 'not known'} years.
        </Point>
        <Point no={4} name="Farm cover">
          {answer.farm && answer.capacity ? (
            <>
              {coverWords(answer.farm)} Capacity {dollars(answer.capacity.usd)} (
              {answer.capacity.lines.map((l) => `${l.what} ${dollars(l.usd)}`).join(', ')}), mean of {answer.capacity.years.join(', ')};
              heating then {dollars(answer.capacity.heatingUsd)}; other term debt {dollars(answer.capacity.termDebtServiceUsd)} a year.
            </>
          ) : (
            <b>{SAVINGS_ONLY}: no statements.</b>
          )}
        </Point>
        <Point no={5} name="Project cover">
          {coverWords(answer.project)}
        </Point>
        <Point no={6} name="Any season under">
          Project: under 1.0 in {ofHundred(answer.project.underOneShare)}, under {cover(terms.requiredProjectCover)} in{' '}
          {ofHundred(answer.project.underRequiredShare)} of 100.{' '}
          {answer.farm &&
            `Farm: under 1.0 in ${ofHundred(answer.farm.underOneShare)}, under ${cover(terms.requiredFarmCover)} in ${ofHundred(answer.farm.underRequiredShare)}. `}
          Longest run: {(answer.farm ?? answer.project).longestRunShare.map((s, run) => `${String(run)} in ${ofHundred(s)}`).join(', ')}.
          Carried over after the line: one in ten over {dollars(answer.carriedUsd.p90)}.
        </Point>
        <Point no={7} name="Stresses">
          Of 100 futures, those with a season under 1.0:
          {stresses
            .filter((s) => s.applies)
            .map((s) => (
              <span key={s.kind} className="line">
                {stressWords[s.kind][0]}: savings {ofHundred(s.projectUnderOneShare)}
                {s.farmUnderOneShare == null ? '' : `, farm ${ofHundred(s.farmUnderOneShare)}`}; default {ofHundred(s.defaultShare)}
              </span>
            ))}
        </Point>
        <Point no={8} name="Month of least cash">
          {least ? `${least.name}: ${dollars(least.ownUsd)} of the borrower’s own money out, middling season.` : 'not reckoned'}
        </Point>
        <Point no={9} name="Largest loan">
          At 90, 95, 99 %: {[0.9, 0.95, 0.99].map((q) => safeDollars(at(q)?.projectUsd)).join(', ')} by the savings
          {answer.farm && `; ${[0.9, 0.95, 0.99].map((q) => safeDollars(at(q)?.farmUsd)).join(', ')} by the farm`}.
        </Point>
        <Point no={10} name="Default and loss">
          Default in {ofHundred(answer.defaultShare)} of 100 {answer.farm ? '' : '(from the savings alone) '}with a line of{' '}
          {dollars(terms.operatingLineUsd)} and a reserve of {dollars(terms.reserveUsd)}. Lost at default {percent(terms.lossGivenDefault)}{' '}
          of balance (the lender’s own flat figure). Expected loss {dollars(answer.lossUsd.mean, 2)} after the guarantee.
        </Point>
        <Point no={11} name="Evidence">
          Data grade of the house {loan.house?.dataGrade}. Outlay: {loan.option?.outlayBasis}.{' '}
          {study?.evidenceUsed.length
            ? `Trials behind the factors of ${String(study.evidenceUsed.length)} retrofits.`
            : 'No trial behind the factor.'}
        </Point>
        <Point no={12} name="Break-even">
          {breakEvenWords(answer, units === 'us')} Fuel saved a season: {dollars(answer.breakEven.askedUsd)} asked,{' '}
          {dollars(answer.breakEven.reckonedUsd)} reckoned.
        </Point>
        <Point no={13} name="In the book">
          {inBook
            ? `With ${String(inBook.others)} other cases the loss at 99 % is ${dollars(inBook.withP99Usd)}; without this one ${dollars(inBook.withoutP99Usd)}.`
            : 'not reckoned'}
        </Point>
        <Point no={14} name="Conditions">
          {loan.covenants.length > 0
            ? `${loan.covenants.map((c) => `${c.words}${c.dueOn ? `, by ${c.dueOn}` : ''}`).join('; ')}.`
            : 'Bills each year for three seasons; cover tested yearly on actuals.'}
          {loan.note ? ` Note: ${loan.note}.` : ''}
          {loan.warnings.map((w) => ` ${w.message}`)}
        </Point>
        <Point no={15} name="Modelled, not a credit score">
          {answer.futuresCount.toLocaleString('en-US')} futures of study {study?.number} ({study?.askedAt.slice(0, 10)}), program {version};
          case of {loan.changedAt.slice(0, 10)} by {loan.changedBy}; {coop}. Signed: ______________________
        </Point>
      </div>
    </article>
  );
}

function coverWords(c: CoverFigures): string {
  const due = c.bySeason.flatMap((s) => (s.cover ? [{ season: s.season, ...s.cover }] : []));
  const [first, worst] = [due[0], [...due].sort((a, b) => a.p50 - b.p50)[0]];
  return first && worst
    ? `First season ${cover(first.p50)} (one in ten under ${cover(first.p10)}); leanest season ${worst.season}: ${cover(worst.p50)} (${cover(worst.p10)}); worst season of a future: middle ${cover(c.worst.p50)}, one in ten under ${cover(c.worst.p10)}.`
    : '';
}
