import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Lacking } from '../../components/forms/lacking.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import type { Trial } from './trials-query.ts';

const SetAside = graphql(`
  mutation SetNightsAside($input: SetNightsAsideInput!) {
    setNightsAside(input: $input) {
      ...Saved
    }
  }
`);

const TakeBack = graphql(`
  mutation TakeNightsBack($trialId: ID!, $expectedRevision: Int!, $no: Int!, $requestId: ID!) {
    takeNightsBack(trialId: $trialId, expectedRevision: $expectedRevision, no: $no, requestId: $requestId) {
      ...Saved
    }
  }
`);

/** Nights left out of a trial, all with their reasons: by the rules of the working out, and by hand. */
export function NightsAside({ trial }: { trial: Trial }) {
  const [open, setOpen] = useState(false);
  const [typed, set] = useState({ house: trial.houses[0] ?? '', from: trial.startsOn, to: trial.startsOn, reason: '' });
  const queries = useQueryClient();
  const aside = useMutation({
    mutationFn: async () =>
      (await ask(SetAside, { input: { requestId: requestId(), trialId: trial.id, expectedRevision: trial.revision, ...typed } }))
        .setNightsAside,
    onSuccess: (d) => {
      if (!d.changeId) return undefined;
      setOpen(false);
      set({ ...typed, reason: '' });
      return queries.invalidateQueries();
    },
  });
  const back = useMutation({
    mutationFn: async (no: number) =>
      (await ask(TakeBack, { trialId: trial.id, expectedRevision: trial.revision, no, requestId: requestId() })).takeNightsBack,
    onSuccess: (d) => (d.changeId ? queries.invalidateQueries() : undefined),
  });
  const answer = aside.data ?? back.data;
  const left = new Map<string, number>();
  for (const c of trial.comparisons) {
    for (const n of c.nights) {
      if (n.leftOut) left.set(`${c.house}: ${n.leftOut}`, (left.get(`${c.house}: ${n.leftOut}`) ?? 0) + 1);
    }
  }
  return (
    <div className="small">
      {(left.size > 0 || trial.nightsAside.length > 0) && (
        <>
          <p style={{ margin: 0 }}>Left out, with the reason on record:</p>
          <ul style={{ marginTop: 4 }}>
            {[...left].map(([why, count]) => (
              <li key={why}>
                {count} {count === 1 ? 'night' : 'nights'}, house {why}
              </li>
            ))}
            {trial.nightsAside.map((n) => (
              <li key={n.no}>
                by hand: house {n.house}, mornings of {n.from} to {n.to}: {n.reason}{' '}
                <button className="link" disabled={back.isPending} onClick={() => back.mutate(n.no)}>
                  take them back in
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      {open ? (
        <fieldset className="form">
          <legend>Nights to set aside</legend>
          <label>
            <span>house</span>
            <select value={typed.house} onChange={(e) => set({ ...typed, house: e.target.value })}>
              {trial.houses.map((h) => (
                <option key={h} value={h}>
                  {h}
                </option>
              ))}
            </select>
          </label>
          <label>
            <span>first morning</span>
            <input type="date" value={typed.from} onChange={(e) => set({ ...typed, from: e.target.value })} />
          </label>
          <label>
            <span>last morning</span>
            <input type="date" value={typed.to} onChange={(e) => set({ ...typed, to: e.target.value })} />
          </label>
          <label>
            <span>why</span>
            <input
              value={typed.reason}
              placeholder="door left open for a delivery"
              onChange={(e) => set({ ...typed, reason: e.target.value })}
            />
          </label>
          <p className="small quiet" style={{ gridColumn: '1 / -1', margin: 0 }}>
            Broken and forgotten nights stay in: they are part of what the retrofit does. The evidence is reckoned again with this change.
          </p>
          <button
            className="filled"
            aria-describedby="aside-lacks"
            disabled={aside.isPending || !typed.from || !typed.to}
            onClick={() => aside.mutate()}
          >
            Set them aside
          </button>
          <Lacking id="aside-lacks" what={[!typed.from && 'the first morning', !typed.to && 'the last morning']} />
          <button className="link" onClick={() => setOpen(false)}>
            leave it
          </button>
        </fieldset>
      ) : (
        <button className="link" onClick={() => setOpen(true)}>
          set nights aside, with a reason
        </button>
      )}
      {answer?.conflict && <p className="fault">Somebody changed the trial meanwhile; reload the page.</p>}
      {answer?.faults.map((f) => (
        <p key={f.message} className="fault">
          {f.message} {f.remedy}
        </p>
      ))}
      {(aside.error ?? back.error) && <p className="fault">{(aside.error ?? back.error)?.message}</p>}
    </div>
  );
}
