import { useState } from 'react';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { useAct } from './act-hook.ts';
import { type Round, SaveRound } from './round-query.ts';

const days = [
  ['rulesSetOn', 'rules set on'],
  ['reserveUntilOn', 'reserve held until'],
  ['groupsUntilOn', 'group money kept until'],
  ['waitingUntilOn', 'waiting list ends on'],
] as const;

/** Name and days of a round that is open. */
export function RoundDays({ round }: { round: Round }) {
  const [editing, edit] = useState(false);
  if (editing) return <DaysForm round={round} close={() => edit(false)} />;
  return (
    <p>
      <button className="link" onClick={() => edit(true)}>
        change name and days
      </button>
    </p>
  );
}

function DaysForm({ round, close }: { round: Round; close: () => void }) {
  const { typed, set, changed } = useTyped(() => ({
    name: round.name,
    lookBackYears: String(round.lookBackYears),
    obligationYears: String(round.obligationYears),
    rulesSetOn: round.rulesSetOn ?? '',
    reserveUntilOn: round.reserveUntilOn ?? '',
    groupsUntilOn: round.groupsUntilOn ?? '',
    waitingUntilOn: round.waitingUntilOn ?? '',
  }));
  const save = useAct(
    async () =>
      (
        await ask(SaveRound, {
          input: {
            id: round.id,
            expectedRevision: round.revision,
            requestId: requestId(),
            name: typed.name,
            days: {
              lookBackYears: Number(typed.lookBackYears),
              obligationYears: Number(typed.obligationYears),
              rulesSetOn: typed.rulesSetOn || null,
              reserveUntilOn: typed.reserveUntilOn || null,
              groupsUntilOn: typed.groupsUntilOn || null,
              waitingUntilOn: typed.waitingUntilOn || null,
            },
          },
        })
      ).saveRound,
    close,
    changed,
  );
  return (
    <form
      aria-label="name and days of the round"
      onSubmit={(e) => {
        e.preventDefault();
        save.run();
      }}
    >
      <div className="form">
        <label>
          <span>name</span>
          <input value={typed.name} onChange={(e) => set({ ...typed, name: e.target.value })} />
        </label>
        {days.map(([key, label]) => (
          <label key={key}>
            <span>{label}</span>
            <input type="date" value={typed[key]} onChange={(e) => set({ ...typed, [key]: e.target.value })} />
          </label>
        ))}
        <label>
          <span>years that earlier grants count against a farm’s cap</span>
          <input
            type="number"
            min={0}
            max={30}
            value={typed.lookBackYears}
            onChange={(e) => set({ ...typed, lookBackYears: e.target.value })}
          />
        </label>
        <label>
          <span>years in which a grant is paid back for the months left</span>
          <input
            type="number"
            min={1}
            max={10}
            value={typed.obligationYears}
            onChange={(e) => set({ ...typed, obligationYears: e.target.value })}
          />
        </label>
      </div>
      <FaultList faults={save.faults} />
      <button className="link" disabled={save.pending}>
        save name and days
      </button>{' '}
      <button className="link" type="button" onClick={close}>
        leave them
      </button>
    </form>
  );
}
