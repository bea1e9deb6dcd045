import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { ItemHistory } from '../../components/item-history.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { dollars, heat, heatUnit, ofHundred } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { AwardForm } from './award-form.tsx';
import { Award, stepWords } from './awards-query.ts';

/** One award: what it comes to, its steps, what was verified. */
export function AwardPage() {
  const { awardId = '' } = useParams();
  const { units } = useUnits();
  const { data, error } = useQuery({ queryKey: ['award', awardId], queryFn: () => ask(Award, { id: awardId }) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the award.</p>;
  const a = data.award;
  if (!a) {
    return (
      <>
        <h1>There is no such award.</h1>
        <p>
          <Link to="/awards">All awards</Link>
        </p>
      </>
    );
  }
  return (
    <>
      <h1>
        {a.farm}, {a.house}:{' '}
        {a.returnedOn ? (
          <>
            the grant of {dollars(a.grantCapUsd, 5)} went back on <b>{a.returnedOn}</b>, {a.returnedReason}.
          </>
        ) : (
          <>
            <b>{dollars(a.payableUsd, 5)}</b>{' '}
            {a.verified ? (
              <>
                that delivered <b>{ofHundred(a.verified.share)} %</b> ({ofHundred(a.verified.low)} to {ofHundred(a.verified.high)}) of the
                saving promised.
              </>
            ) : (
              <>
                of grant, <b>{a.state}</b>
                {a.overdue ? `, ${String(a.overdue.daysLate)} days late` : ''}.
              </>
            )}
          </>
        )}
      </h1>
      <p className="acts">
        {!a.isEntered && <Link to={`/awards/${a.id}/letter`}>award letter to print</Link>}
        <Link to={`/rounds/${a.roundId}`}>{a.round}</Link>
        <Link to={`/houses/${a.houseId}`}>the house</Link>
        <Link to="/awards">all awards</Link>
      </p>
      {a.isEntered && (
        <p className="lead">
          <b>Entered by hand, not decided here.</b> Its grant and promise are changed on the page of{' '}
          <Link to={`/rounds/${a.roundId}`}>its round</Link>.
        </p>
      )}
      <div className="two">
        <section>
          <h2>Money</h2>
          <p>
            {a.title}. Awarded on {a.awardedOn}
            {a.decisionNumber ? ` by decision ${String(a.decisionNumber)}` : ''}: at most <b>{dollars(a.grantCapUsd, 6)}</b>, and{' '}
            {String(Math.round(1000 * a.grantShare) / 10)} % of the eligible cost, of {dollars(a.outlayUsd, 6)} expected in whole.
          </p>
          {a.invoicedUsd !== null && a.invoicedUsd !== undefined && (
            <p>
              Invoiced {dollars(a.invoicedUsd, 6)}: the grant comes to <b>{dollars(a.payableUsd, 6)}</b>, {dollars(a.paidUsd, 6)} of it is
              paid
              {a.freedUsd > 0 ? `, ${dollars(a.freedUsd, 6)} went back to the round` : ''}.
            </p>
          )}
          <p>Until the grant is paid the farm lays out {dollars(a.bridgeUsd, 6)} itself.</p>
          {a.promisedKwh && (
            <p>
              Promised: {heat(a.promisedKwh, units)} {heatUnit(units)} of fuel a season in the mean of all winters
              {a.promisedLowKwh != null &&
                a.promisedHighKwh != null &&
                ` (${heat(a.promisedLowKwh, units)} to ${heat(a.promisedHighKwh, units)})`}
              {a.savingUsd &&
                `; ${dollars(a.savingUsd.p50)} a season in the middle of all futures (${dollars(a.savingUsd.p10)} to ${dollars(a.savingUsd.p90)})`}
              .
            </p>
          )}
          {a.conditions.length > 0 && (
            <p>
              <b>On condition</b>: {a.conditions.join('; ')}.
            </p>
          )}
          {a.verified && (
            <p>
              Verified{' '}
              {a.verified.season ? `for ${String(a.verified.season)}-${String((a.verified.season + 1) % 100).padStart(2, '0')}` : ''}:{' '}
              {a.verified.words}.
            </p>
          )}
        </section>
        <section>
          <h2>Steps</h2>
          <table>
            <thead>
              <tr>
                <th scope="col">step</th>
                <th scope="col">due</th>
                <th scope="col">done</th>
              </tr>
            </thead>
            <tbody>
              {a.milestones.map((m) => (
                <tr key={m.kind}>
                  <td>
                    {stepWords[m.kind]}
                    {m.evidence && <span className="second">{m.evidence}</span>}
                  </td>
                  <td>{m.dueOn}</td>
                  <td>{m.doneOn ?? (a.overdue?.kind === m.kind ? <b>{a.overdue.daysLate} days late</b> : 'not yet')}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      </div>
      <AwardForm key={a.revision} award={a} />
      <ItemHistory id={a.id} revision={a.revision} />
    </>
  );
}
