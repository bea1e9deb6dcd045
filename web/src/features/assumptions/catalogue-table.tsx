import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { AssumptionsQuery } from '../../lib/graphql/generated/graphql.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { inSentence } from '../../lib/units/told.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { SaveFigure } from './assumption-queries.ts';
import { digits, shown, toShown } from './assumption-units.ts';
import { OwnFigure } from './own-figure.tsx';
import { NumberHead } from '../../components/number-head.tsx';

export type Figure = AssumptionsQuery['coop']['catalogueFigures'][number];

const kinds: Record<Figure['kind'], string> = {
  RETROFIT: 'retrofits',
  COVERING: 'coverings',
  HEATER: 'heaters',
  HEATING_PLAN: 'heating plans',
  FUEL: 'fuels',
  DEFAULT: 'what is taken where nobody says',
};

const known: Record<string, string> = {
  Read: 'read',
  Computed: 'computed',
  FromMemory: 'from memory',
  CommonPractice: 'common practice, no source',
  Entered: 'own figure',
};

/** The catalogue: every number with unit, range and source, one entry at a time; the co-op lays its own over it, with the reason. */
export function CatalogueTable({ figures }: { figures: readonly Figure[] }) {
  const { units, say } = useUnits();
  const queries = useQueryClient();
  const entries = [...new Map(figures.map((f) => [`${f.kind}~${f.code}`, f])).entries()];
  const [entry, choose] = useState(entries.find(([, f]) => f.code === 'foam')?.[0] ?? entries[0]?.[0] ?? '');
  const save = useMutation({
    mutationFn: (v: { figure: Figure; value: number | null; reason: string | null }) =>
      ask(SaveFigure, {
        input: { requestId: requestId(), kind: v.figure.kind, code: v.figure.code, name: v.figure.name, value: v.value, reason: v.reason },
      }),
    onSuccess: () => queries.invalidateQueries(),
  });
  const own = figures.filter((f) => f.isOwn);
  const shownFigures = figures.filter((f) => `${f.kind}~${f.code}` === entry);
  return (
    <section>
      <h2>The catalogue, and the co-op&apos;s own figures over it</h2>
      <p className="caption">
        Costs, lives and saving factors that studies take for every house unless the house has a figure of its own.{' '}
        {own.length === 0
          ? 'The co-op has no figures of its own yet.'
          : `The co-op has ${String(own.length)} of its own: ${own.map((f) => `${say(f.title)} of ${inSentence(say(f.of))}`).join('; ')}.`}
      </p>
      <label style={{ maxWidth: 420 }}>
        <span>entry</span>
        <select value={entry} onChange={(e) => choose(e.target.value)}>
          {Object.entries(kinds).map(([kind, title]) => {
            const of = entries.filter(([, f]) => f.kind === kind);
            return of.length === 0 ? null : (
              <optgroup key={kind} label={title}>
                {of.map(([key, f]) => (
                  <option key={key} value={key}>
                    {say(f.of)}
                  </option>
                ))}
              </optgroup>
            );
          })}
        </select>
      </label>
      {save.data?.saveCatalogueFigure.faults.map((f) => (
        <p key={f.message} className="fault" role="alert">
          {f.message} {f.remedy}
        </p>
      ))}
      {save.error && <p className="fault">{save.error.message}</p>}
      <div className="scroll" role="region" aria-label="catalogue, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <caption className="hidden">catalogue of retrofits</caption>
          <thead>
            <tr>
              <th scope="col">number</th>
              <th scope="col" className="n">
                in use
              </th>
              <th scope="col">unit</th>
              <NumberHead over="one in ten" under="under to over" />
              <th scope="col">how it is known</th>
              <th scope="col">own figure</th>
            </tr>
          </thead>
          <tbody>
            {shownFigures.map((f) => {
              const at = (si: number) => digits(toShown(si, f.unit, units));
              return (
                <tr key={f.name}>
                  <td>{say(f.title)}</td>
                  <td className="n chief">
                    <b>{at(f.value)}</b>
                  </td>
                  <td>{shown(f.unit, units).unit}</td>
                  <td className="n" data-name="range">
                    {f.low != null && f.high != null ? `${at(f.low)} to ${at(f.high)}` : ''}
                  </td>
                  <td className="small quiet note">
                    {f.isOwn
                      ? `own figure: ${f.reason ?? ''}; the catalogue has ${f.builtIn == null ? 'none' : at(f.builtIn)}`
                      : `${known[f.status] ?? f.status}${f.source && f.status !== 'CommonPractice' && f.status !== 'FromMemory' ? `: ${f.source}` : ''}`}
                  </td>
                  <td className="note">
                    <OwnFigure figure={f} units={units} save={(value, reason) => save.mutate({ figure: f, value, reason })} />
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}
