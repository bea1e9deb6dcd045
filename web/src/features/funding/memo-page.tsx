import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { dollars } from '../../lib/units/format.ts';
import { MemoPoints } from './memo-points.tsx';
import { MemoTable } from './memo-table.tsx';
import { FundingRound, type Plan, type Round } from './round-query.ts';
import { Sheet } from '../../components/sheet.tsx';

const MemoCoop = graphql(`
  query MemoCoop {
    coop {
      name
      isDemo
    }
  }
`);

/** The memo of a round: one page for the committee, letter or A4. */
export function MemoPage() {
  const { roundId = '' } = useParams();
  const { data, error } = useQuery({ queryKey: ['round', roundId], queryFn: () => ask(FundingRound, { id: roundId }) });
  const coop = useQuery({ queryKey: ['memo-coop'], queryFn: () => ask(MemoCoop) }).data?.coop;
  if (error) return <p className="fault">{error.message}</p>;
  if (!data || !coop) return <p className="quiet">Reading the memo.</p>;
  const round = data.fundingRound;
  const plan = round?.plan;
  if (!round || !plan) return <h1>There is no such round, or it has no order yet.</h1>;
  const last = round.decisions.at(-1);
  const open = round.state === 'OPEN';
  return (
    <Sheet
      invented={coop.isDemo}
      acts={<Link to={`/rounds/${round.id}`}>the round</Link>}
      foot={`${coop.name}, ${round.name}, ${plan.decidedOn}; ${plan.studyNumber ? `study ${String(plan.studyNumber)}, ${(plan.futures ?? 0).toLocaleString('en-US')} futures, result ${(plan.studyResultSha256 ?? '').slice(0, 12)}` : 'no study'}; ${last ? `decision ${String(last.number)}, checksum ${last.bodySha256.slice(0, 12)}` : 'not decided yet'}`}
    >
      <p className="small quiet">
        Memo of the round. {coop.name}, {round.name}
      </p>
      <Asked round={round} plan={plan} open={open} />
      <MemoTable plan={plan} />
      <MemoPoints round={round} plan={plan} />
      <p className="signatures small">
        {round.committee
          .filter((m) => m.present)
          .map((m) => (
            <span key={m.key}>{m.name}</span>
          ))}
        <span>date</span>
      </p>
    </Sheet>
  );
}

function Asked({ round, plan, open }: { round: Round; plan: Plan; open: boolean }) {
  const funded = plan.rows.filter((r) => r.funded).length;
  const reserve = round.rules.budgetUsd - plan.availableUsd;
  const s = plan.sums;
  return (
    <>
      <h1>
        {open ? 'Decision asked: fund' : 'Decided: fund'}{' '}
        <b>
          {funded} of {plan.rows.length}
        </b>{' '}
        houses; <b>{dollars(plan.grantUsd, 6)}</b> of {dollars(round.rules.budgetUsd, 6)}; reserve {dollars(reserve, 6)}.
      </h1>
      {s && (
        <p>
          It saves members <b>{dollars(s.savingUsd.p50)}</b> a season in the middle of all futures ({dollars(s.savingUsd.p10)} one in ten
          lower, {dollars(s.savingUsd.p90)} one in ten higher; {dollars(s.worstTenthUsd)} in the worst tenth),{' '}
          {Math.round(s.heatSavedKwh / 293.07).toLocaleString('en-US')} MMBtu of heat and{' '}
          {Math.round(s.co2SavedKg / 1000).toLocaleString('en-US')} t of CO₂ a season: $
          {(s.savingUsd.p50 / Math.max(1, plan.grantUsd)).toFixed(2)} a season for each grant dollar.
        </p>
      )}
    </>
  );
}
