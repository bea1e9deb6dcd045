import { useState } from 'react';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { HouseFinder } from '../../components/forms/house-finder.tsx';
import { useHouseName } from '../../components/forms/house-name.ts';
import { useTyped } from '../../components/forms/typed.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { dollars } from '../../lib/units/format.ts';
import { useAct } from './act-hook.ts';
import { type Round, SaveRound } from './round-query.ts';

type Application = Round['applications'][number];
type Typed = Pick<Application, 'houseId' | 'completeOn' | 'otherGrantsUsd' | 'shown'>;

/** What is on file for a house: when the application was complete, other public money, what was shown of the tests. */
export function ApplicationsPart({ round }: { round: Round }) {
  const [editing, edit] = useState<string>();
  const open = round.state === 'OPEN';
  const save = useAct(
    async (applications: Typed[]) =>
      (
        await ask(SaveRound, {
          input: {
            id: round.id,
            expectedRevision: round.revision,
            requestId: requestId(),
            name: round.name,
            applications: applications.map(({ houseId, completeOn, otherGrantsUsd, shown }) => ({
              houseId,
              completeOn: completeOn ?? null,
              otherGrantsUsd,
              shown: shown.map(({ test, passed, evidence, on }) => ({ test, passed, evidence: evidence ?? null, on: on ?? null })),
            })),
          },
        })
      ).saveRound,
    () => edit(undefined),
  );
  const known = (house: string) => round.applications.find((a) => a.houseId === house);
  return (
    <section>
      <h2>Applications on file</h2>
      <p className="caption">
        A house without one takes part with what the register says of its farm; what the rules ask to be shown then stands as a condition.
      </p>
      <ul>
        {round.applications.map((a) => (
          <li key={a.houseId}>
            <b>
              {a.farm}, {a.house}
            </b>
            {a.completeOn ? `: complete on ${a.completeOn}` : ''}
            {a.otherGrantsUsd > 0 ? `; ${dollars(a.otherGrantsUsd)} of other public money` : ''}
            {a.shown.map((s) => `; ${s.test}: ${s.passed ? 'yes' : 'no'}${s.evidence ? `, ${s.evidence}` : ''}`).join('')}{' '}
            {open && (
              <button className="link" onClick={() => edit(a.houseId)}>
                change
                <span className="hidden">
                  {' '}
                  that of {a.farm}, {a.house}
                </span>
              </button>
            )}
          </li>
        ))}
      </ul>
      {open && (
        <div className="form">
          <HouseFinder label="house to enter one for" value="" change={edit} />
        </div>
      )}
      {editing && (
        <ApplicationForm
          key={editing}
          tests={round.rules.tests}
          application={known(editing) ?? { houseId: editing, completeOn: null, otherGrantsUsd: 0, shown: [] }}
          save={(a) => save.run([...round.applications.filter((x) => x.houseId !== editing), a])}
          remove={known(editing) ? () => save.run(round.applications.filter((x) => x.houseId !== editing)) : undefined}
          close={() => edit(undefined)}
        />
      )}
      <FaultList faults={save.faults} />
    </section>
  );
}

function ApplicationForm(props: {
  tests: readonly string[];
  application: Typed;
  save: (a: Typed) => void;
  remove: (() => void) | undefined;
  close: () => void;
}) {
  const { typed, set, changed } = useTyped(() => props.application);
  useUnsaved(changed);
  const name = useHouseName(props.application.houseId) ?? 'this house';
  const shown = (test: string) => typed.shown.find((s) => s.test === test);
  const show = (test: string, passed: string, evidence: string) =>
    set({
      ...typed,
      shown: [
        ...typed.shown.filter((s) => s.test !== test),
        ...(passed === '' ? [] : [{ test, passed: passed === 'yes', evidence, on: shown(test)?.on ?? null }]),
      ],
    });
  return (
    <form
      aria-label={`application of ${name}`}
      onSubmit={(e) => {
        e.preventDefault();
        props.save(typed);
      }}
    >
      <h3>{name}</h3>
      <div className="form">
        <label>
          <span>complete on</span>
          <input type="date" value={typed.completeOn ?? ''} onChange={(e) => set({ ...typed, completeOn: e.target.value || null })} />
        </label>
        <label>
          <span>other public money for the work, $</span>
          <input
            type="number"
            min={0}
            value={typed.otherGrantsUsd}
            onChange={(e) => set({ ...typed, otherGrantsUsd: Number(e.target.value) })}
          />
        </label>
        {props.tests.map((t) => (
          <div key={t}>
            <label>
              <span>{t}</span>
              <select
                value={shown(t) ? (shown(t)?.passed ? 'yes' : 'no') : ''}
                onChange={(e) => show(t, e.target.value, shown(t)?.evidence ?? '')}
              >
                <option value="">not shown yet</option>
                <option value="yes">yes</option>
                <option value="no">no: not eligible</option>
              </select>
            </label>
            {shown(t) && (
              <label>
                <span>what shows it</span>
                <input value={shown(t)?.evidence ?? ''} onChange={(e) => show(t, shown(t)?.passed ? 'yes' : 'no', e.target.value)} />
              </label>
            )}
          </div>
        ))}
      </div>
      <button className="filled">Save the application</button>{' '}
      {props.remove && (
        <button className="link" type="button" onClick={props.remove}>
          take it off the file
        </button>
      )}{' '}
      <button className="link" type="button" onClick={props.close}>
        leave it as it was
      </button>
    </form>
  );
}
