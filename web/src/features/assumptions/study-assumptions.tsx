import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { AssumptionsQuery } from '../../lib/graphql/generated/graphql.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { SaveAssumption } from './assumption-queries.ts';
import { digits, shown, toShown } from './assumption-units.ts';
import { NumberCell } from './number-cell.tsx';

type Sets = AssumptionsQuery['coop']['assumptionSets'];

/** The assumptions of a study, each with unit, default, range and source, beside any earlier set. */
export function StudyAssumptions({ setId, revision, sets }: { setId: string; revision: number; sets: Sets }) {
  const { units, say } = useUnits();
  const queries = useQueryClient();
  const [other, compare] = useState('defaults');
  const save = useMutation({
    mutationFn: (v: { field: string; value: number }) =>
      ask(SaveAssumption, { input: { setId, expectedRevision: revision, requestId: requestId(), ...v } }),
    onSuccess: () => queries.invalidateQueries(),
  });
  const answer = save.data?.saveAssumption;
  const [now] = sets;
  const beside = sets.find((s) => s.key === other) ?? sets.at(-1);
  if (!now || !beside) return null;
  const theirs = new Map(beside.values.map((v) => [v.field, v.value]));
  const differ = now.values.filter((v) => theirs.get(v.field) !== v.value).length;
  return (
    <section>
      <h2>What a study assumes</h2>
      <p className="caption">
        Green figures can be changed; that marks the newest study out of date, and the study keeps its own. {differ}{' '}
        {differ === 1 ? 'figure differs' : 'figures differ'} from the set beside it.
      </p>
      <label style={{ maxWidth: 420 }}>
        <span>laid beside</span>
        <select value={beside.key} onChange={(e) => compare(e.target.value)}>
          {sets.slice(1).map((s) => (
            <option key={s.key} value={s.key}>
              {say(s.name)}
            </option>
          ))}
        </select>
      </label>
      {answer?.faults.map((f) => (
        <p key={f.message} className="fault" role="alert">
          {f.message} {f.remedy}
        </p>
      ))}
      {answer?.conflict && (
        <p className="fault">Somebody changed the assumptions meanwhile; the page shows theirs now. Type yours again.</p>
      )}
      {save.error && <p className="fault">{save.error.message}</p>}
      <div className="scroll" role="region" aria-label="assumptions, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <caption className="hidden">assumptions of a study</caption>
          <thead>
            <tr>
              <th scope="col">assumption</th>
              <th scope="col" className="n">
                in use now
              </th>
              <th scope="col">unit</th>
              <th scope="col" className="n">
                {say(beside.name)}
              </th>
              <th scope="col" className="n">
                taken between
              </th>
              <th scope="col">where the default comes from</th>
            </tr>
          </thead>
          <tbody>
            {now.values.map((v) => {
              const at = (si: number) => digits(toShown(si, v.unit, units));
              const their = theirs.get(v.field);
              return (
                <tr key={v.field}>
                  <td>{say(v.title)}</td>
                  <td className="n chief">
                    <NumberCell
                      label={v.title}
                      si={v.value}
                      unit={v.unit}
                      units={units}
                      save={(value) => save.mutate({ field: v.field, value })}
                    />
                  </td>
                  <td>{shown(v.unit, units).unit}</td>
                  <td className="n" data-name="beside">
                    {their !== undefined && their !== v.value ? <b>{at(their)}, differs</b> : their === undefined ? '' : at(their)}
                  </td>
                  <td className="n" data-name="between">
                    {v.field === 'seed' ? 'any whole number' : `${at(v.low)} to ${at(v.high)}`}
                  </td>
                  <td className="small quiet note">{v.source}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}
