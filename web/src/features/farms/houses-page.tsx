import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useSearchParams } from 'react-router';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { Choice } from '../../components/forms/field.tsx';
import { GradeMark } from '../../components/grade-mark.tsx';
import { ask } from '../../lib/graphql/client.ts';
import type { HouseFilterInput } from '../../lib/graphql/generated/graphql.ts';
import { counted, fuelName, length } from '../../lib/units/format.ts';
import { Lacking } from '../../components/forms/lacking.tsx';
import { useUnits } from '../../lib/units/units-context.tsx';
import { ChangeHousesForm } from './change-houses-form.tsx';
import { coverings, fuels, heatedBy, shapes } from './house-words.ts';
import { Houses } from './houses-queries.ts';
import { UndoNotice } from '../../components/undo-notice.tsx';

const grades = [
  ['A', 'A, metered'],
  ['B', 'B, season totals'],
  ['C', 'C, no fuel record'],
] as const;

/** Every house of the co-op: found by what it is, and many changed at once. */
export function HousesPage() {
  const { units, say } = useUnits();
  const [params, setParams] = useSearchParams();
  const [chosen, choose] = useState<ReadonlySet<string>>(new Set());
  const [changing, setChanging] = useState(false);
  const [notice, setNotice] = useState<{ said: string; changeId: string } | null>(null);
  const said = (key: string) => params.get(key) ?? '';
  const filter: HouseFilterInput = {
    text: said('find') || null,
    fuel: (said('fuel') || null) as HouseFilterInput['fuel'],
    shape: (said('shape') || null) as HouseFilterInput['shape'],
    roofCoveringCode: said('covering') || null,
    grade: (said('grade') || null) as HouseFilterInput['grade'],
  };
  const after = params.get('after');
  const { data, error } = useQuery({
    queryKey: ['houses', filter, after],
    queryFn: () => ask(Houses, { filter, after }),
    placeholderData: (d) => d,
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the houses.</p>;
  const { total, items, next } = data.coop.houses;
  const put = (key: string, value: string) => {
    const all = new URLSearchParams(params);
    if (value) all.set(key, value);
    else all.delete(key);
    if (key !== 'after') all.delete('after');
    setParams(all, { replace: key !== 'after' });
  };
  const filterBy = (key: string, label: string, options: readonly (readonly [string, string])[]) => (
    <Choice label={label} value={said(key)} change={(v) => put(key, v)} options={[['', 'any'], ...options]} />
  );
  const toggle = (id: string) => {
    const all = new Set(chosen);
    if (!all.delete(id)) all.add(id);
    choose(all);
  };
  return (
    <>
      <h1>
        <b>{counted(total, 'house')}</b> {total === 1 ? 'fits' : 'fit'}.
      </h1>
      <p className="lead">Tick the houses that changed alike, and give the new answer once. One undo takes it back.</p>
      {notice && <UndoNotice {...notice} close={() => setNotice(null)} />}
      <div className="form">
        <label>
          <span>farm or house</span>
          <input value={said('find')} onChange={(e) => put('find', e.target.value)} />
        </label>
        {filterBy('fuel', 'fuel', fuels)}
        {filterBy('shape', 'shape', shapes)}
        {filterBy('covering', 'covering', coverings)}
        {filterBy('grade', 'data grade', grades)}
      </div>
      <p>
        <button className="link" onClick={() => choose(new Set([...chosen, ...items.map((h) => h.id)]))}>
          tick the {items.length} shown
        </button>{' '}
        ·{' '}
        <button className="link" onClick={() => choose(new Set())}>
          tick none
        </button>{' '}
        ·{' '}
        <button className="link" aria-describedby="ticks-lack" disabled={chosen.size === 0} onClick={() => setChanging(true)}>
          change the {chosen.size} ticked
        </button>{' '}
        <Lacking id="ticks-lack" what={[chosen.size === 0 && 'a tick at the houses to change']} />
      </p>
      {changing && chosen.size > 0 && (
        <ChangeHousesForm
          houseIds={[...chosen]}
          close={() => setChanging(false)}
          done={(words, changeId) => {
            setNotice({ said: words, changeId });
            choose(new Set());
          }}
        />
      )}
      <LedgerTable name="houses" className="stack">
        <thead>
          <tr>
            <th scope="col">house</th>
            <th scope="col">size</th>
            <th scope="col">covering</th>
            <th scope="col">film due</th>
            <th scope="col">heating plan</th>
            <th scope="col">fuel</th>
            <th scope="col">data grade</th>
          </tr>
        </thead>
        <tbody>
          {items.map((h) => (
            <tr key={h.id}>
              <td>
                <input
                  type="checkbox"
                  style={{ minHeight: 0, width: 'auto' }}
                  aria-label={`tick ${h.farm.name}, ${h.name}`}
                  checked={chosen.has(h.id)}
                  onChange={() => toggle(h.id)}
                />{' '}
                <Link to={`/houses/${h.id}`}>
                  {h.farm.name}, {h.name}
                </Link>
              </td>
              <td>
                {length(h.widthM, units)} × {length(h.lengthM, units)}
                {h.bays > 1 ? `, ${String(h.bays)} bays` : ''}
              </td>
              <td>{h.covering}</td>
              <td>{h.filmDueYear}</td>
              <td>{say(heatedBy(h))}</td>
              <td>{fuelName[h.fuel]}</td>
              <td>
                <GradeMark grade={h.dataGrade} />
              </td>
            </tr>
          ))}
        </tbody>
      </LedgerTable>
      {next && (
        <p className="below">
          <button className="link" onClick={() => put('after', next)}>
            more houses
          </button>
        </p>
      )}
    </>
  );
}
