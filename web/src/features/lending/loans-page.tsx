import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useNavigate } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import type { LoansQuery } from '../../lib/graphql/generated/graphql.ts';
import { counted, dollars, figure, ofHundred } from '../../lib/units/format.ts';
import { LoansDocument } from './lending-queries.ts';
import { percent, safeDollars, stateWords } from './lending-words.ts';
import { LoanForm } from './loan-form.tsx';
import './lending.css';
import { NumberHead } from '../../components/number-head.tsx';

type Row = LoansQuery['coop']['loanCases'][number];

const safe = (row: Row) => row.answer?.largest.find((l) => l.confidence === 0.95);

export function LoansPage() {
  const [adding, setAdding] = useState(false);
  const go = useNavigate();
  const { data, error } = useQuery({ queryKey: ['loans'], queryFn: () => ask(LoansDocument) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Judging the loans on the newest study.</p>;
  const { loanCases, newestStudy } = data.coop;
  const open = loanCases.filter((c) => c.terms.state !== 'DECLINED');
  const carried = open.filter((c) => (safe(c)?.projectUsd ?? 0) >= c.terms.amountUsd);
  return (
    <>
      {open.length > 0 ? (
        <h1>
          <b>{counted(open.length, 'loan')}</b> of <b>{dollars(open.reduce((s, c) => s + c.terms.amountUsd, 0))}</b>{' '}
          {open.length === 1 ? 'is' : 'are'} asked for or lent; the savings alone pay{' '}
          <b>{carried.length === 0 ? 'none' : carried.length}</b> of them in every season of 95 futures in 100.
        </h1>
      ) : (
        <h1>No loan is judged yet.</h1>
      )}
      <p className="lead">
        Each loan is set against the same futures as everything else: what its own option saves (project cover), and, where the farm gave
        statements, what the whole farm has for all its term debt (farm cover). A dear winter helps the first and hurts the second.
      </p>
      <p className="caution">
        <b>Modelled, not a credit score.</b> Savings are uncertain and borrowing against them can fail: a lender decides on the whole
        borrower.
      </p>
      <div className="acts">
        {!adding && (
          <button className="link" onClick={() => setAdding(true)}>
            add a loan case
          </button>
        )}
        {open.length > 0 && <Link to="/loans/book">the cases together, as a book</Link>}
      </div>
      {adding && <LoanForm close={() => setAdding(false)} saved={(id) => void go(`/loans/${id}`)} />}
      {loanCases.length > 0 ? (
        <section>
          <h2>Cases</h2>
          <p className="caption">
            Of 100 futures: those in which some season&apos;s payment is missed by the savings alone, and by the farm as a whole. Safe: the
            largest loan that the savings pay in every season of 95 futures in 100.
          </p>
          <Cases rows={loanCases} />
        </section>
      ) : (
        <p>
          A loan case needs an option of a house{newestStudy ? '' : ' and a study'}: choose the option, give amount, rate and term, and read
          how often its savings miss the payment.
        </p>
      )}
    </>
  );
}

function Cases({ rows }: { rows: readonly Row[] }) {
  return (
    <table className="stack">
      <thead>
        <tr>
          <th scope="col">farm, loan</th>
          <NumberHead over="amount" under="$" />
          <th scope="col" className="terms">
            terms
          </th>
          <NumberHead over="savings miss," under="of 100" />
          <NumberHead over="farm misses," under="of 100" />
          <NumberHead over="safe at 95 %," under="$" />
          <NumberHead over="default," under="of 100" />
          <NumberHead over="expected" under="loss, $" />
        </tr>
      </thead>
      <tbody>
        {rows.map((c) => (
          <tr key={c.id}>
            <td>
              <Link to={`/loans/${c.id}`}>{c.farm?.name ?? 'a farm no longer there'}</Link>
              <span className="second">
                {c.name}, {stateWords(c.terms.state)}
              </span>
            </td>
            <td className="n chief">
              <span className="wide">{figure(c.terms.amountUsd)}</span>
              <span className="phone">{dollars(c.terms.amountUsd)}</span>
            </td>
            <td className="terms">
              {c.terms.termYears} years at {percent(c.terms.rateNow)}
              {c.terms.rateKind === 'INDEXED' ? ', indexed' : ''}
            </td>
            {c.answer ? (
              <>
                <td className="n" data-name="savings miss, of 100">
                  {ofHundred(c.answer.project.underOneShare)}
                </td>
                <td className="n" data-name="farm misses, of 100">
                  {c.answer.farm ? ofHundred(c.answer.farm.underOneShare) : <span className="quiet">no statements</span>}
                </td>
                <td className="n" data-name="safe at 95 %">
                  {safeDollars(safe(c)?.projectUsd).replace('$', '')}
                </td>
                <td className="n" data-name="default, of 100">
                  {ofHundred(c.answer.defaultShare)}
                </td>
                <td className="n" data-name="expected loss, $">
                  {figure(c.answer.lossUsd.mean, 2)}
                </td>
              </>
            ) : (
              <td colSpan={5} className="note">
                {c.problem ? `${c.problem.message} ${c.problem.remedy}` : 'no answer'}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
