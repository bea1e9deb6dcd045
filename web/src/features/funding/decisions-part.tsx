import { useState } from 'react';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { dollars } from '../../lib/units/format.ts';
import { useAct } from './act-hook.ts';
import { CorrectDecision, FundNext, type Round } from './round-query.ts';

const kinds = {
  ROUND: 'the round was decided',
  CORRECTION: 'corrected',
  WAITING_LIST: 'from the waiting list',
  ENTERED: 'entered from papers',
} as const;

/** The decisions of a round with their checksums, the waiting list, and the way to correct one. */
export function DecisionsPart({ round }: { round: Round }) {
  const next = useAct(async () => (await ask(FundNext, { roundId: round.id, requestId: requestId() })).fundNext);
  return (
    <div className="two">
      <section>
        <h2>Decisions</h2>
        <p className="caption">Each text hashes to its checksum and names the one before it; none is ever changed.</p>
        <ul>
          {round.decisions.map((d) => (
            <li key={d.id}>
              <b>Decision {d.number}</b>, {d.decidedOn}: {kinds[d.kind]}
              {d.correctsNumber ? `, on decision ${String(d.correctsNumber)}` : ''}
              {d.reason && d.kind !== 'ENTERED' ? `; ${d.reason}` : ''}
              {d.studyNumber ? `; study ${String(d.studyNumber)}` : ''}.{' '}
              <span className="small quiet">
                checksum {d.bodySha256.slice(0, 12)}, before it {d.previousSha256 ? d.previousSha256.slice(0, 12) : 'none'}
              </span>{' '}
              <a
                className="small"
                href={`data:application/json;charset=utf-8,${encodeURIComponent(d.body)}`}
                download={`decision-${String(d.number)}.json`}
              >
                its text<span className="hidden"> of decision {d.number}</span>
              </a>
            </li>
          ))}
        </ul>
        <CorrectForm round={round} />
      </section>
      <section>
        <h2>Waiting list</h2>
        <p className="caption">
          The order is the one frozen with the decision; money that comes back goes down it, nothing is ranked anew.
        </p>
        <p>
          <b>{dollars(round.freeUsd)}</b> can be given again.{' '}
          {round.canFundNext ? `Next: ${round.nextInLine ?? ''}.` : `Nobody can be funded: ${round.nextInLine ?? ''}.`}
        </p>
        {round.canFundNext && (
          <button className="filled" disabled={next.pending} onClick={() => next.run()}>
            Fund the next on the list
          </button>
        )}
        <FaultList faults={next.faults} />
      </section>
    </div>
  );
}

function CorrectForm({ round }: { round: Round }) {
  const [editing, edit] = useState(false);
  const rows = round.plan?.rows ?? [];
  const [house, setHouse] = useState(rows[0]?.houseId ?? '');
  const [usd, setUsd] = useState('');
  const [reason, setReason] = useState('');
  const close = () => {
    setUsd('');
    setReason('');
    edit(false);
  };
  const correct = useAct(
    async () =>
      (
        await ask(CorrectDecision, {
          input: { roundId: round.id, requestId: requestId(), reason, rows: [{ houseId: house, grantUsd: Number(usd) }] },
        })
      ).correctDecision,
    close,
    editing && (usd !== '' || reason !== ''),
  );
  if (!editing) {
    return (
      <button className="link" onClick={() => edit(true)}>
        correct the decision
      </button>
    );
  }
  return (
    <form
      aria-label="correct the decision"
      onSubmit={(e) => {
        e.preventDefault();
        correct.run();
      }}
    >
      <div className="form">
        <label>
          <span>house</span>
          <select value={house} onChange={(e) => setHouse(e.target.value)}>
            {rows.map((r) => (
              <option key={r.optionId} value={r.houseId}>
                {r.farm}, {r.house} ({r.funded ? dollars(r.grantUsd, 5) : 'waits'})
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>grant as it should have been, $; 0 = none</span>
          <input type="number" min={0} required value={usd} onChange={(e) => setUsd(e.target.value)} />
        </label>
        <label>
          <span>what was wrong</span>
          <input required value={reason} onChange={(e) => setReason(e.target.value)} />
        </label>
      </div>
      <FaultList faults={correct.faults} />
      <button className="filled" disabled={correct.pending}>
        Make a correcting decision
      </button>{' '}
      <button className="link" type="button" onClick={close}>
        leave it as it is
      </button>
    </form>
  );
}
