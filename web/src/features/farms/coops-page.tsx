import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { Field } from '../../components/forms/field.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { goToCoop } from '../../lib/graphql/chosen-coop.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { Coops, NewCoop, RenameCoop } from './coop-queries.ts';

/** The co-ops on this machine: choose one, begin one, give one another name. */
export function CoopsPage() {
  const queries = useQueryClient();
  const { data } = useQuery({ queryKey: ['coops'], queryFn: () => ask(Coops) });
  const [name, setName] = useState('');
  const [other, setOther] = useState('');
  const [withStations, setWith] = useState(false);
  const [request] = useState(requestId);
  const coops = data?.coops ?? [];
  const demo = coops.find((c) => c.isDemo);
  const chosen = coops.find((c) => c.isChosen);
  const add = useMutation({
    mutationFn: () => ask(NewCoop, { name, stationsFrom: withStations ? (demo?.id ?? null) : null, requestId: request }),
    onSuccess: (d) => (d.newCoop.coopId ? goToCoop(d.newCoop.coopId, '/farms') : undefined),
  });
  const rename = useMutation({
    mutationFn: () => ask(RenameCoop, { name: other }),
    onSuccess: (d) => (d.renameCoop.coopId ? queries.invalidateQueries() : undefined),
  });
  const faults = add.data?.newCoop.faults ?? [];
  return (
    <>
      <h1>
        <b>{coops.length}</b> {coops.length === 1 ? 'co-op is' : 'co-ops are'} kept on this machine; they never mix.
      </h1>
      <p className="lead">Farms, prices, assumptions and studies belong to one co-op. The example stays beside yours as it is.</p>
      <section>
        <h2>Choose one</h2>
        <ul>
          {coops.map((c) => (
            <li key={c.id}>
              {c.isChosen ? (
                <b>{c.name}</b>
              ) : (
                <button className="link" onClick={() => goToCoop(c.id, '/')}>
                  {c.name}
                </button>
              )}
              {c.isDemo ? ', an invented example' : ''}
              {c.isChosen ? ', open now' : ''}
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h2>Begin a co-op of your own</h2>
        <form
          onSubmit={(e) => {
            e.preventDefault();
            add.mutate();
          }}
        >
          <div className="form">
            <Field
              label="name of the co-op"
              value={name}
              change={(v) => {
                add.reset();
                setName(v);
              }}
              name="name"
              faults={faults}
            />
          </div>
          {demo && (
            <label style={{ display: 'block' }}>
              <input type="checkbox" style={{ minHeight: 0 }} checked={withStations} onChange={(e) => setWith(e.target.checked)} /> take the
              example&apos;s invented weather stations along, to learn with until a real record is in
            </label>
          )}
          <FaultList faults={faults.filter((f) => f.field !== 'name')} />
          {add.error && <p className="fault">{add.error.message}</p>}
          <p>
            <button className="filled" type="submit" aria-describedby="coop-lacks" disabled={name.trim() === '' || add.isPending}>
              Begin an empty co-op
            </button>{' '}
            <Lacking id="coop-lacks" what={[name.trim() === '' && 'a name']} />
          </p>
        </form>
      </section>
      {chosen && !chosen.isDemo && (
        <section>
          <h2>Another name for {chosen.name}</h2>
          <form
            onSubmit={(e) => {
              e.preventDefault();
              rename.mutate();
            }}
          >
            <div className="form">
              <Field label="its new name" value={other} change={setOther} name="name" faults={rename.data?.renameCoop.faults ?? []} />
            </div>
            <button className="link" type="submit" aria-describedby="name-lacks" disabled={other.trim() === '' || rename.isPending}>
              give it this name
            </button>{' '}
            <Lacking id="name-lacks" what={[other.trim() === '' && 'the new name']} />
          </form>
        </section>
      )}
    </>
  );
}
