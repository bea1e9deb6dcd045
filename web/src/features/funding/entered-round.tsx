import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useNavigate } from 'react-router';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { ItemHistory } from '../../components/item-history.tsx';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { counted, dollars, figure, heat, heatUnit, ofHundred } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { useAct } from './act-hook.ts';
import { EnteredForm } from './entered-form.tsx';
import { DeleteEnteredRound, EnteredRound, type Entered } from './entered-query.ts';
import { NumberHead } from '../../components/number-head.tsx';

/** A round entered by hand: what its papers say, never a decision of this program. */
export function EnteredRoundPart({ id }: { id: string }) {
  const navigate = useNavigate();
  const [mending, setMending] = useState(false);
  const { data, error } = useQuery({ queryKey: ['entered-round', id], queryFn: () => ask(EnteredRound, { id }) });
  const round = data?.fundingRound;
  const remove = useAct(async () => {
    const answer = (await ask(DeleteEnteredRound, { id, revision: round?.revision ?? 0, requestId: requestId() })).deleteEnteredRound;
    if (answer.changeId) {
      await navigate('/rounds', {
        state: { said: `${round?.name ?? 'The round'} is deleted with its awards.`, changeId: answer.changeId },
      });
    }
    return answer;
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data || !round) return <p className="quiet">Reading the round.</p>;
  return (
    <>
      <h1>
        {round.name} gave <b>{dollars(round.awards.reduce((s, a) => s + a.grantCapUsd, 0))}</b> to{' '}
        <b>{counted(round.awards.length, 'house')}</b> on {round.enteredDecidedOn}.
      </h1>
      <p className="lead">
        <b>Entered by hand, not decided here.</b>{' '}
        {round.rulesInShort ? `Its rules: ${round.rulesInShort}.` : 'Its rules are not on record.'}
      </p>
      <p className="acts">
        {!mending && (
          <button className="link" onClick={() => setMending(true)}>
            mend it, add awards
          </button>
        )}
        <button className="link" disabled={remove.pending} onClick={() => remove.run()}>
          delete the round with its awards
        </button>
        <Link to={`/rounds?right=${round.id}`}>beside another round</Link>
        <Link to="/awards">awards of all rounds</Link>
      </p>
      <FaultList faults={remove.faults} />
      {mending && (
        <EnteredForm known={round} works={data.coop.realisedFactors} done={() => setMending(false)} close={() => setMending(false)} />
      )}
      <Given round={round} />
      <ItemHistory id={round.id} revision={round.revision} />
    </>
  );
}

function Given({ round }: { round: Entered }) {
  const { units, say } = useUnits();
  return (
    <section>
      <h2>Awards</h2>
      <LedgerTable name="awards of the round" className="stack">
        <thead>
          <tr>
            <th scope="col">farm, house, what</th>
            <NumberHead over="grant" under="$" />
            <th scope="col" className="n">
              promised
              <br />
              {heatUnit(units)} of fuel
            </th>
            <NumberHead over="delivered," under="% of promised" />
          </tr>
        </thead>
        <tbody>
          {round.awards.map((a) => (
            <tr key={a.id}>
              <td>
                <Link to={`/awards/${a.id}`}>
                  <b>{a.farm}</b>, {a.house}
                </Link>
                <span className="second">{say(a.title)}</span>
              </td>
              <td className="n chief">{figure(a.grantCapUsd, 5)}</td>
              <td className="n" data-name={`promised, ${heatUnit(units)}`}>
                {a.promisedKwh ? heat(a.promisedKwh, units) : 'not told'}
                {a.promisedLowKwh != null && a.promisedHighKwh != null && (
                  <span className="second">
                    {heat(a.promisedLowKwh, units)} to {heat(a.promisedHighKwh, units)}
                  </span>
                )}
              </td>
              <td className="n" data-name="delivered %">
                {a.verified ? ofHundred(a.verified.share) : 'not yet'}
                {a.verified && (
                  <span className="second">
                    {ofHundred(a.verified.low)} to {ofHundred(a.verified.high)}
                  </span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </LedgerTable>
    </section>
  );
}
