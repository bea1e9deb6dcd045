import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { PriceCorrelationsQuery } from '../../lib/graphql/generated/graphql.ts';
import { FUELS, matrixOf, PAIRS, pairsOf } from './correlation-pairs.ts';
import { CorrelationsQuery, SaveCorrelations } from './prices-queries.ts';
import { NumberHead } from '../../components/number-head.tsx';

type Known = PriceCorrelationsQuery['coop']['priceCorrelations'];
type Term = 'shortTerm' | 'longTerm';

const words = (v: number | undefined) => (v ?? 0).toFixed(2);

/** Correlations of the fuels' prices: in use, the defaults, and what the records in use say. */
export function CorrelationsPart() {
  const { data, error } = useQuery({ queryKey: ['price-correlations'], queryFn: () => ask(CorrelationsQuery) });
  if (error) return <p className="fault">{error.message}</p>;
  const set = data?.coop.scenarioSet;
  if (!set) return null;
  return <Form key={set.revision} set={set} known={data.coop.priceCorrelations} />;
}

function Form({ set, known }: { set: { id: string; revision: number }; known: Known }) {
  const queries = useQueryClient();
  const [typed, type] = useState({ shortTerm: pairsOf(known.shortTerm), longTerm: pairsOf(known.longTerm) });
  const save = useMutation({
    mutationFn: (usual: boolean) =>
      ask(SaveCorrelations, {
        input: {
          setId: set.id,
          expectedRevision: set.revision,
          requestId: requestId(),
          shortTerm: usual ? null : (matrixOf(typed.shortTerm) ?? null),
          longTerm: usual ? null : (matrixOf(typed.longTerm) ?? null),
        },
      }),
    onSuccess: (d) => (d.savePriceCorrelations.changeId ? queries.invalidateQueries() : undefined),
  });
  const answer = save.data?.savePriceCorrelations;
  const ready = matrixOf(typed.shortTerm) !== undefined && matrixOf(typed.longTerm) !== undefined;
  const input = (term: Term, at: number, name: string) => (
    <input
      className="inline"
      inputMode="decimal"
      aria-label={`${name}, ${term === 'shortTerm' ? 'short-term' : 'long-term'}`}
      aria-invalid={(typed[term][at] ?? '').trim() === '' || !Number.isFinite(Number(typed[term][at]))}
      value={typed[term][at] ?? ''}
      onChange={(e) => type({ ...typed, [term]: typed[term].map((v, i) => (i === at ? e.target.value : v)) })}
    />
  );
  return (
    <section>
      <h2>How the fuels move together</h2>
      <p className="caption">
        1: two prices always move alike; 0: each for itself. Fuels taken as independent make the whole co-op&apos;s dear seasons look rarer
        than they are. What the records say is drawn towards the default, the more the fewer years two records share.
      </p>
      <div className="scroll" role="region" aria-label="table of correlations, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <caption className="hidden">correlations of the prices</caption>
          <thead>
            <tr>
              <th scope="col">pair</th>
              <th scope="col" className="n">
                short-term
              </th>
              <th scope="col" className="n">
                default, records
              </th>
              <th scope="col" className="n">
                long-term
              </th>
              <th scope="col" className="n">
                default, records
              </th>
              <NumberHead over="months" under="shared" />
            </tr>
          </thead>
          <tbody>
            {PAIRS.map(([i, j], at) => {
              const name = `${FUELS[i] ?? ''} with ${FUELS[j] ?? ''}`;
              const cell = i * 4 + j;
              return (
                <tr key={name}>
                  <td>{name}</td>
                  <td className="n" data-name="short-term">
                    {input('shortTerm', at, name)}
                  </td>
                  <td className="n" data-name="default, records">
                    {words(known.usualShortTerm[cell])}, {words(known.fittedShortTerm[cell])}
                  </td>
                  <td className="n" data-name="long-term">
                    {input('longTerm', at, name)}
                  </td>
                  <td className="n" data-name="default, records">
                    {words(known.usualLongTerm[cell])}, {words(known.fittedLongTerm[cell])}
                  </td>
                  <td className="n" data-name="months shared">
                    {known.sharedMonths[cell]}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {answer?.faults.map((f) => (
        <p key={f.message} className="fault" role="alert">
          {f.field === 'longTerm' ? 'Long-term: ' : 'Short-term: '}
          {f.message} {f.remedy}
        </p>
      ))}
      {answer?.nearestCorrelations.map((n) => (
        <p key={n.field}>
          <button className="link" onClick={() => type({ ...typed, [n.field]: pairsOf(n.values) })}>
            take the nearest, {n.distance.toFixed(3)} away
          </button>
        </p>
      ))}
      {answer?.conflict && (
        <p className="fault">Somebody changed the assumptions meanwhile; the page shows theirs now. Type yours again.</p>
      )}
      {save.error && <p className="fault">{save.error.message}</p>}
      <p className="below">
        <button className="link" disabled={!ready || save.isPending} onClick={() => save.mutate(false)}>
          save these correlations
        </button>
        <button
          className="link"
          onClick={() => type({ shortTerm: pairsOf(known.fittedShortTerm), longTerm: pairsOf(known.fittedLongTerm) })}
        >
          fill in what the records say
        </button>
        {known.isOwn && (
          <button className="link" disabled={save.isPending} onClick={() => save.mutate(true)}>
            back to the defaults
          </button>
        )}
      </p>
    </section>
  );
}
