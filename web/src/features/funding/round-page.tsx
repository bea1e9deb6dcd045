import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import { dollars } from '../../lib/units/format.ts';
import { ApplicationsPart } from './applications-part.tsx';
import { CommitteePart } from './committee-part.tsx';
import { DecisionsPart } from './decisions-part.tsx';
import { EnteredRoundPart } from './entered-round.tsx';
import { addressOf } from './funding-rules.ts';
import { PlanReports } from './plan-reports.tsx';
import { PlanTable } from './plan-table.tsx';
import { RoundClosing } from './round-closing.tsx';
import { FundingRound, type Round } from './round-query.ts';
import { RulesWords } from './rules-words.tsx';

/** A kept round: its rules, its order, its committee; then its decisions and awards. */
export function RoundPage() {
  const { roundId = '' } = useParams();
  const { data, error } = useQuery({ queryKey: ['round', roundId], queryFn: () => ask(FundingRound, { id: roundId }) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the round.</p>;
  const round = data.fundingRound;
  if (!round) {
    return (
      <>
        <h1>There is no such round.</h1>
        <p>
          <Link to="/rounds">All rounds</Link>
        </p>
      </>
    );
  }
  if (round.state === 'ENTERED') return <EnteredRoundPart id={round.id} />;
  const open = round.state === 'OPEN';
  return (
    <>
      <Heading round={round} />
      <p className="acts">
        {open && <Link to={`/funding?${addressOf(round)}`}>change the rules, pin, leave out</Link>}
        {round.plan && <Link to={`/rounds/${round.id}/memo`}>memo to print</Link>}
        <Link to={`/rounds?right=${round.id}`}>beside another round</Link>
        {!open && <Link to="/awards">awards</Link>}
      </p>
      {!round.plan && <p className="lead">The order needs a study: run one by the line above.</p>}
      <div className="rules">
        <section>
          <details className="fold" open={window.innerWidth > 640}>
            <summary>
              <h2>Rules of this round</h2>
            </summary>
            <RulesWords round={round} />
          </details>
        </section>
        {round.plan && <PlanTable plan={round.plan} rule={round.rules.paybackSeasons} decided={!open} />}
      </div>
      {round.plan?.sums && <PlanReports plan={round.plan} merit={round.rules.merit} />}
      {!open && <DecisionsPart round={round} />}
      <CommitteePart round={round} />
      {(open || round.applications.length > 0) && <ApplicationsPart round={round} />}
      {open && <RoundClosing round={round} />}
    </>
  );
}

function Heading({ round }: { round: Round }) {
  const plan = round.plan;
  if (!plan) return <h1>{round.name} has no order yet.</h1>;
  const funded = plan.rows.filter((r) => r.funded).length;
  return (
    <h1>
      {round.name} {round.state === 'OPEN' ? 'would fund' : 'funded'}{' '}
      <b>
        {funded} of {plan.rows.length}
      </b>{' '}
      houses with <b>{dollars(plan.grantUsd)}</b>
      {plan.sums && (
        <>
          {' '}
          and {round.state === 'OPEN' ? 'save' : 'saves'} members <b>{dollars(plan.sums.savingUsd.p50)}</b> a season (
          {dollars(plan.sums.savingUsd.p10)} to {dollars(plan.sums.savingUsd.p90)})
        </>
      )}
      .
    </h1>
  );
}
