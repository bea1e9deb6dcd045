import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useNavigate, useParams } from 'react-router';
import { ItemHistory } from '../../components/item-history.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { dollars, ofHundred } from '../../lib/units/format.ts';
import { CaseSheet } from './case-sheet.tsx';
import { LoanCaseDocument, LoanStressDocument, type LoanCase } from './lending-queries.ts';
import { collateralWords, payment, percent, perPayment, safeDollars, SAVINGS_ONLY, stateWords } from './lending-words.ts';
import { DeleteLoan } from './loan-actions.tsx';
import { CoverBand } from './loan-covers.tsx';
import { LoanForm } from './loan-form.tsx';
import { typedOf } from './loan-form-fields.ts';
import { LargestChart } from './loan-largest.tsx';
import { LoanMoney, Shortfalls } from './loan-money.tsx';
import { securityOf } from './security.ts';
import { LoanSeasons } from './loan-seasons.tsx';
import { LoanStresses } from './loan-stresses.tsx';
import { Statements } from './statements.tsx';
import './lending.css';

export function LoanPage() {
  const { caseId = '' } = useParams();
  const go = useNavigate();
  const [changing, setChanging] = useState(false);
  const { data, error } = useQuery({ queryKey: ['loan', caseId], queryFn: () => ask(LoanCaseDocument, { id: caseId }) });
  const stresses = useQuery({
    queryKey: ['loan-stresses', caseId],
    queryFn: () => ask(LoanStressDocument, { id: caseId }),
    enabled: !!data?.loanCase?.answer,
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Judging the loan on the newest study.</p>;
  const loan = data.loanCase;
  if (!loan)
    return (
      <p>
        There is no such loan case. <Link to="/loans">All loans</Link>
      </p>
    );
  const { answer, terms } = loan;
  return (
    <>
      <div className="screen-only">
        <Heading loan={loan} />
        <Lead loan={loan} />
        <div className="acts">
          <Link to="/loans">all loans</Link>
          {!changing && (
            <button className="link" onClick={() => setChanging(true)}>
              change the terms
            </button>
          )}
          {answer && (
            <button className="link" onClick={() => window.print()}>
              print the case sheet
            </button>
          )}
          <DeleteLoan id={loan.id} revision={loan.revision} name={loan.name} done={() => void go('/loans')} />
        </div>
        {loan.warnings.map((w) => (
          <p key={w.code} className="caution">
            <b>{w.message}</b> {w.remedy}
          </p>
        ))}
        <p className="caution">
          <b>Modelled, not a credit score.</b>{' '}
          {answer?.farm
            ? 'It knows the option, the fuel and the statements given, and nothing else of the borrower.'
            : `${SAVINGS_ONLY}: a farm repays from all it has, and none of that is known here.`}
        </p>
        <p>
          {collateralWords(loan)}{' '}
          {loan.covenants.length > 0 &&
            `Covenants: ${loan.covenants.map((c) => `${c.words}${c.dueOn ? `, by ${c.dueOn}` : ''}`).join('; ')}.`}
        </p>
        {changing && (
          <LoanForm
            known={{ id: loan.id, revision: loan.revision, typed: typedOf(terms, loan.name, loan.note), security: securityOf(loan) }}
            close={() => setChanging(false)}
            saved={() => setChanging(false)}
          />
        )}
        {answer && (
          <>
            <div className="two even">
              <CoverBand
                title="Project cover: the option’s savings alone"
                caption="Net saving of a season over what the loan asks in it. A mild winter with cheap fuel pulls it down."
                cover={answer.project}
              />
              {answer.farm ? (
                <CoverBand
                  title="Farm cover: the whole farm"
                  caption={`Capacity for term debt over all of its service, this loan's in it; ${terms.drawsMargin ? 'the margin of sales is drawn as well' : 'the margin of sales is taken as certain'}. A dear winter pulls it down.`}
                  cover={answer.farm}
                />
              ) : (
                <section>
                  <h2>Farm cover is not shown</h2>
                  <p>
                    The farm gave no statements. {SAVINGS_ONLY}. Enter up to three years below and the whole farm is set against all its
                    term debt, on the same futures.
                  </p>
                </section>
              )}
            </div>
            <div className="two even">
              <LargestChart
                answer={answer}
                amountUsd={terms.amountUsd}
                requiredProject={terms.requiredProjectCover}
                requiredFarm={terms.requiredFarmCover}
              />
              <LoanMoney loan={loan} answer={answer} />
            </div>
            <LoanStresses stresses={stresses.data?.loanCase?.stresses} error={stresses.error} hasFarm={!!answer.farm} />
            <div className="two even">
              <Shortfalls loan={loan} answer={answer} />
              <LoanSeasons answer={answer} />
            </div>
          </>
        )}
        {loan.farm && <Statements farm={loan.farm} capacity={answer?.capacity ?? null} heatingUsd={answer?.farmHeatingUsd} />}
        <ItemHistory id={loan.id} revision={loan.revision} />
      </div>
      {answer && (
        <CaseSheet
          loan={loan}
          answer={answer}
          stresses={stresses.data?.loanCase?.stresses ?? []}
          inBook={stresses.data?.loanCase?.inBook ?? undefined}
          study={data.coop.newestStudy ?? undefined}
          coop={data.coop.name}
          version={data.version}
        />
      )}
    </>
  );
}

function Heading({ loan }: { loan: LoanCase }) {
  const { answer, problem } = loan;
  if (!answer) return <h1>{problem ? `${problem.message} ${problem.remedy}` : 'The loan has no answer yet.'}</h1>;
  const safe = answer.largest.find((l) => l.confidence === 0.95);
  return (
    <h1>
      In <b>{ofHundred(answer.project.underOneShare)} of 100</b> futures the savings miss the payment in some season
      {answer.farm && (
        <>
          , and the farm as a whole in <b>{ofHundred(answer.farm.underOneShare)} of 100</b>
        </>
      )}
      ; the safe loan at 95 % is <b>{safeDollars(safe?.projectUsd)}</b>
      {answer.farm && (
        <>
          {' '}
          by the savings and <b>{safeDollars(safe?.farmUsd)}</b> by the farm
        </>
      )}
      .
    </h1>
  );
}

function Lead({ loan }: { loan: LoanCase }) {
  const { answer, terms, option } = loan;
  const saving = option?.result?.savingUsd;
  return (
    <p className="lead">
      {loan.name}, {loan.farm?.name}:{' '}
      {option ? <Link to={`/options/${option.id}`}>{option.title}</Link> : 'an option that the house has no longer'},{' '}
      {stateWords(terms.state)}. <b>{dollars(terms.amountUsd)}</b> at {percent(terms.rateNow)}
      {terms.rateKind === 'INDEXED'
        ? ` (index ${percent(terms.indexPerYear)} and margin ${percent(terms.marginPerYear)})`
        : ', fixed'}, {terms.termYears} years
      {answer && (
        <>
          : <b>{payment(answer.paymentUsd)}</b> {perPayment[terms.payments]}
        </>
      )}
      {saving && (
        <>
          , against a saving of <b>{dollars(saving.p50)}</b> in a middling season ({dollars(saving.p10)} to {dollars(saving.p90)})
        </>
      )}
      .
    </p>
  );
}
