import { useState } from 'react';
import { useNavigate } from 'react-router';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { WayBack } from '../../components/forms/ways-out.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { counted } from '../../lib/units/format.ts';
import { useAct } from './act-hook.ts';
import { RoundDays } from './round-days.tsx';
import { CloseRound, DeleteRound, type Round } from './round-query.ts';

/** What is missing before a round can be decided, and the deciding itself. */
export function RoundClosing({ round }: { round: Round }) {
  const [sure, setSure] = useState<'close' | 'delete'>();
  const navigate = useNavigate();
  const close = useAct(async () => (await ask(CloseRound, { id: round.id, revision: round.revision, requestId: requestId() })).closeRound);
  const remove = useAct(
    async () => (await ask(DeleteRound, { id: round.id, revision: round.revision, requestId: requestId() })).deleteItem,
    () => void navigate('/rounds'),
  );
  const grants = counted(round.plan?.rows.filter((r) => r.funded).length ?? 0, 'grant');
  return (
    <section>
      <h2>Decide</h2>
      <p className="caption">
        Deciding freezes rules, study, order, acts of the committee and votes under a checksum that names the decision before it. It is not
        undone: a fault is corrected by a new decision that names this one.
      </p>
      <RoundDays round={round} />
      {round.obstacles.map((o) => (
        <p key={o.message}>
          <span className="fault">{o.message}</span> {o.remedy}
        </p>
      ))}
      <p className="small caution">
        <b>Caution.</b> Grants go to houses with burners inside: letters ask for ducted air, a carbon monoxide alarm, licensed trades and
        local codes. Savings are uncertain.
      </p>
      {sure === 'close' && (
        <p key="close">
          <button className="filled" disabled={close.pending || round.obstacles.length > 0} onClick={() => close.run()}>
            Freeze it and award {grants}
          </button>{' '}
          <WayBack take={() => setSure(undefined)}>not yet</WayBack>
        </p>
      )}
      {sure === 'delete' && (
        <p key="delete">
          The round goes with its rules, committee and applications; undo in the history brings it back.{' '}
          <button className="link" onClick={() => remove.run()}>
            delete {round.name}
          </button>{' '}
          <WayBack take={() => setSure(undefined)}>keep it</WayBack>
        </p>
      )}
      {!sure && (
        <p key="ask">
          <button className="filled" disabled={round.obstacles.length > 0 || !round.plan} onClick={() => setSure('close')}>
            Close the round
          </button>{' '}
          <button className="link" onClick={() => setSure('delete')}>
            delete the round
          </button>
        </p>
      )}
      <FaultList faults={[...close.faults, ...remove.faults]} />
    </section>
  );
}
