import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import { dollars, heat, heatUnit } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { Award, type Awarded, stepWords } from './awards-query.ts';
import { Sheet } from '../../components/sheet.tsx';

/** The letter that goes with an award: a cap and a share, scope, dates, proof, duties. */
export function LetterPage() {
  const { awardId = '' } = useParams();
  const { data, error } = useQuery({ queryKey: ['award', awardId], queryFn: () => ask(Award, { id: awardId }) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the letter.</p>;
  const { coop, award: a } = data;
  if (!a) return <h1>There is no such award.</h1>;
  const due = (kind: keyof typeof stepWords) => a.milestones.find((m) => m.kind === kind)?.dueOn ?? '';
  const share = String(Math.round(1000 * a.grantShare) / 10);
  return (
    <Sheet
      invented={coop.isDemo}
      acts={<Link to={`/awards/${a.id}`}>the award</Link>}
      foot={`${coop.name}, ${a.round}, award of ${a.awardedOn}; ${a.studyNumber ? `study ${String(a.studyNumber)}` : 'no study'}; ${a.decisionNumber ? `decision ${String(a.decisionNumber)}` : 'given before decisions were kept'}`}
    >
      <p>
        {coop.name}
        <br />
        {a.awardedOn}
      </p>
      <p>To {a.farm}</p>
      <h1>
        Grant for {a.house}:{' '}
        <b>
          {share} % of the eligible cost, at most {dollars(a.grantCapUsd, 6)}
        </b>
        .
      </h1>
      <p>
        The committee funds this work on your house: <b>{a.title}</b>, expected to cost {dollars(a.outlayUsd, 6)} in whole. If it costs
        less, the grant falls to the same {share} %; if it costs more, the grant stays at {dollars(a.grantCapUsd, 6)}.
      </p>
      {a.returnedOn && (
        <p>
          <b>This grant went back to the round on {a.returnedOn}</b>: {a.returnedReason}.
        </p>
      )}
      {a.conditions.length > 0 && (
        <p>
          <b>The grant is firm once</b> {a.conditions.join('; ')}.
        </p>
      )}
      <h2>When</h2>
      <ul>
        <li>
          Accept in writing by {due('ACCEPTED')} and order the work by {due('ORDERED')}. Do not begin before you have accepted.
        </li>
        <li>
          Installed before the heating season, by {due('INSTALLED')}; we inspect it by {due('INSPECTED')}.
        </li>
        <li>
          Invoices and proof of payment reach us by {due('INVOICED')}; the grant is paid by {due('PAID')}. Until then you lay out{' '}
          {dollars(a.bridgeUsd, 6)} yourself.
        </li>
        <li>Your bills of the first season reach us by {due('REPORTED')}, so that the saving can be verified.</li>
      </ul>
      <p>From 60 days late, with nothing paid, the money may go to the next on the list.</p>
      <h2>What you promise</h2>
      <ul>
        <li>To keep the work in use and in repair, to let us see it, and to give us your fuel bills for it.</li>
        <li>
          To pay back the grant for the months left if you take it out or sell the house within {a.obligationYears ?? 5} years after it is
          paid, unless the buyer takes this over. Failure through no fault of yours is not paid back.
        </li>
        <li>To tell us of other public money for the same work: all together may not pass the cost.</li>
      </ul>
      <Promise award={a} />
      <p className="caution">
        <b>Caution.</b> A tighter house with a burner inside needs ducted air and a carbon monoxide alarm. Wiring and gas by licensed
        trades. Foam and covers as the fire code says. Somebody opens a closed curtain before snow.
      </p>
      <p className="signatures small">
        <span>for {coop.name}</span>
        <span>accepted, {a.farm}</span>
        <span>date</span>
      </p>
    </Sheet>
  );
}

/** What the order of the decision reckoned: dollars with their range, the fuel behind them. */
function Promise({ award: a }: { award: Awarded }) {
  const { units } = useUnits();
  if (!a.promisedKwh && !a.savingUsd) return null;
  return (
    <p>
      {a.savingUsd && (
        <>
          We reckon that it saves you{' '}
          <b>
            {dollars(a.savingUsd.p50)} a season in the middle of all futures ({dollars(a.savingUsd.p10)} one in ten lower,{' '}
            {dollars(a.savingUsd.p90)} one in ten higher)
          </b>
          , after running and renewals.{' '}
        </>
      )}
      {a.promisedKwh && (
        <>
          {a.savingUsd ? 'The bills are held against' : 'Reckoned:'} {heat(a.promisedKwh, units)} {heatUnit(units)} of fuel a season,{' '}
          {a.savingUsd ? 'the mean of all winters' : 'as the papers of the round say; no range was reckoned for it'}.{' '}
        </>
      )}
      {a.savingUsd ? 'This is a range, not a promise.' : 'It is what was reckoned, not what is assured.'}
    </p>
  );
}
