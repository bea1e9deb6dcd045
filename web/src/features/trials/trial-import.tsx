import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { HouseFinder } from '../../components/forms/house-finder.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import type { ImportTrialMutation, TrialHouseInput } from '../../lib/graphql/generated/graphql.ts';
import type { EvidenceCoop } from './trials-query.ts';
import { counted } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { FiringRate } from './firing-rate.tsx';
import { PASTED, typedOver } from '../../lib/upload.ts';
import { PastedText } from '../../components/forms/pasted-text.tsx';
import { NothingKept } from '../../components/forms/nothing-kept.tsx';

const ImportTrial = graphql(`
  mutation ImportTrial($input: ImportTrialInput!) {
    importTrial(input: $input) {
      kept
      rows
      summary
      houses {
        label
        measure
        unit
        readings
        everInUse
      }
      answers
      faults {
        message
        remedy
        line
        column
      }
    }
  }
`);

const measures = { METER: 'meter', USED: 'fuel used', BURNER_HOURS: 'burner hours' } as const;

/** A notebook by file or pasted: looked at first, then what stands behind each house is told, then kept with its evidence. */
export function TrialImport({ coop }: { coop: EvidenceCoop }) {
  const queries = useQueryClient();
  const { units, say } = useUnits();
  const [file, setFile] = useState({ name: PASTED, text: '' });
  const [typed, set] = useState({ name: '', place: '', station: coop.weatherStations[0]?.id ?? '', unit: '' });
  const [told, tell] = useState<Record<string, Partial<TrialHouseInput>>>({});
  const [goodRowsOnly, setGood] = useState(false);
  const [found, setFound] = useState<ImportTrialMutation['importTrial'] | null>(null);
  const run = useMutation({
    mutationFn: async ({ checkOnly, withHouses }: { checkOnly: boolean; withHouses: boolean }) =>
      (
        await ask(ImportTrial, {
          input: {
            requestId: requestId(),
            fileName: file.name,
            text: file.text,
            name: typed.name || file.name,
            place: typed.place || null,
            weatherStationId: typed.station || null,
            temperatureUnit: typed.unit || null,
            goodRowsOnly,
            checkOnly,
            houses: withHouses ? (found?.houses ?? []).map((h) => ({ ...defaults(h.label, h.everInUse), ...told[h.label] })) : null,
          },
        })
      ).importTrial,
    onSuccess: (d) => {
      setFound(d);
      return d.kept ? queries.invalidateQueries() : undefined;
    },
  });
  const defaults = (label: string, everInUse: boolean): TrialHouseInput => ({
    label,
    role: everInUse ? 'TREATED' : 'CONTROL',
    retrofitCode: everInUse ? 'curtain' : null,
    houseId: coop.houses.items[0]?.id ?? '',
  });
  return (
    <section>
      <h2>Bring in a trial notebook</h2>
      <p className="caption">
        Rows of house, time, reading, inside and outside temperature, state (in use, idle, broken), or a sheet with columns for each house.
        Nothing is kept before you say so.
      </p>
      <div className="form">
        <label>
          <span>the file</span>
          <input
            type="file"
            accept=".csv,.txt,text/csv"
            onChange={async (e) => {
              const f = e.target.files?.[0];
              if (f) {
                setFile({ name: f.name, text: await f.text() });
                setFound(null);
              }
            }}
          />
        </label>
        <label>
          <span>name of the trial</span>
          <input value={typed.name} onChange={(e) => set({ ...typed, name: e.target.value })} />
        </label>
        <label>
          <span>place</span>
          <input value={typed.place} onChange={(e) => set({ ...typed, place: e.target.value })} />
        </label>
        <label>
          <span>weather station</span>
          <select value={typed.station} onChange={(e) => set({ ...typed, station: e.target.value })}>
            {coop.weatherStations.map((s) => (
              <option key={s.id} value={s.id}>
                {s.markedName}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>unit of the temperatures</span>
          <select value={typed.unit} onChange={(e) => set({ ...typed, unit: e.target.value })}>
            <option value="">told by the notebook</option>
            <option value="F">Fahrenheit</option>
            <option value="C">Celsius</option>
          </select>
        </label>
      </div>
      <PastedText text={file.text} rows={4} change={(text) => setFile({ name: text === '' ? PASTED : typedOver(file.name), text })} />
      <button
        className="filled"
        aria-describedby="notebook-lacks"
        disabled={!file.text || run.isPending}
        onClick={() => run.mutate({ checkOnly: true, withHouses: false })}
      >
        Look at the notebook
      </button>{' '}
      <Lacking id="notebook-lacks" what={[!file.text && 'a file, or its text pasted above']} />
      {run.error && <p className="fault">{run.error.message}</p>}
      {found && (
        <div aria-live="polite">
          <h3>
            {found.kept ? 'Kept' : 'Found'}: {found.summary}
          </h3>
          {found.answers.map((a) => (
            <p key={a}>{a}</p>
          ))}
          {found.faults.length > 0 && (
            <ul className="fault">
              {found.faults.slice(0, 100).map((f, i) => (
                <li key={i}>
                  {f.line ? `Line ${String(f.line)}${f.column ? `, column ${String(f.column)}` : ''}: ` : ''}
                  {f.message} {f.remedy}
                </li>
              ))}
            </ul>
          )}
          {!found.kept && found.houses.length > 0 && (
            <>
              {found.houses.map((h) => {
                const mine = { ...defaults(h.label, h.everInUse), ...told[h.label] };
                const change = (part: Partial<TrialHouseInput>) => tell({ ...told, [h.label]: { ...told[h.label], ...part } });
                return (
                  <fieldset key={h.label} className="form">
                    <legend>
                      House {h.label}: {counted(h.readings, 'reading')}, {measures[h.measure]}
                    </legend>
                    <label>
                      <span>in the trial</span>
                      <select
                        value={mine.role === 'CONTROL' ? '' : (mine.retrofitCode ?? '')}
                        onChange={(e) =>
                          change(
                            e.target.value ? { role: 'TREATED', retrofitCode: e.target.value } : { role: 'CONTROL', retrofitCode: null },
                          )
                        }
                      >
                        <option value="">as it stands</option>
                        {coop.realisedFactors.map((f) => (
                          <option key={f.retrofitCode} value={f.retrofitCode}>
                            {say(f.retrofitTitle)}
                          </option>
                        ))}
                      </select>
                    </label>
                    <HouseFinder label="built as" value={mine.houseId ?? ''} change={(houseId) => change({ houseId })} />
                    {h.measure === 'BURNER_HOURS' ? (
                      <>
                        <FiringRate units={units} change={(firingRateKw) => change({ firingRateKw })} />
                        <label>
                          <span>clocked on the meter</span>
                          <input type="checkbox" onChange={(e) => change({ rateClocked: e.target.checked })} />
                        </label>
                      </>
                    ) : (
                      <label>
                        <span>unit of the meter</span>
                        <input
                          defaultValue={h.unit ?? ''}
                          placeholder="therm, gal, m3"
                          onChange={(e) => change({ unit: e.target.value })}
                        />
                      </label>
                    )}
                  </fieldset>
                );
              })}
              <p>
                {found.faults.length > 0 && (
                  <label style={{ display: 'inline' }}>
                    <input type="checkbox" style={{ minHeight: 0 }} checked={goodRowsOnly} onChange={(e) => setGood(e.target.checked)} />{' '}
                    keep what could be read{' '}
                  </label>
                )}
                <button className="link" disabled={run.isPending} onClick={() => run.mutate({ checkOnly: true, withHouses: true })}>
                  Work it out
                </button>{' '}
                <button className="filled" disabled={run.isPending} onClick={() => run.mutate({ checkOnly: false, withHouses: true })}>
                  Keep the trial and its evidence
                </button>
                <NothingKept asked={run.variables?.checkOnly === false && !run.isPending && found.faults.length > 0 && !goodRowsOnly} />
              </p>
            </>
          )}
        </div>
      )}
    </section>
  );
}
