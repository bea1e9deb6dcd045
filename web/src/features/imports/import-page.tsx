import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { Field } from '../../components/forms/field.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { readNumber } from '../../lib/units/typed-number.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import type { ImportInput } from '../../lib/graphql/generated/graphql.ts';
import { counted } from '../../lib/units/format.ts';
import { type ImportKind, PASTED, typedOver } from '../../lib/upload.ts';
import { PastedText } from '../../components/forms/pasted-text.tsx';
import { NothingKept } from '../../components/forms/nothing-kept.tsx';
import { KeptNext } from './kept-next.tsx';
import { Findings } from '../../components/findings.tsx';
import { type Chosen, FileChoice } from './file-choice.tsx';
import { NormalsExample } from './normals-example.tsx';
import { SheetToFill } from './sheet-to-fill.tsx';

/** What a file looked at, or kept, answers. */
graphql(`
  fragment Imported on ImportPayload {
    kept
    canImport
    rows
    summary
    faults {
      code
      field
      message
      remedy
      line
      column
    }
  }
`);
const ImportWeather = graphql(`
  mutation ImportWeather($input: ImportInput!) {
    importWeather(input: $input) {
      ...Imported
    }
  }
`);
const ImportNormals = graphql(`
  mutation ImportNormals($input: ImportInput!) {
    importNormals(input: $input) {
      ...Imported
    }
  }
`);
const ImportPrices = graphql(`
  mutation ImportPrices($input: ImportInput!) {
    importPrices(input: $input) {
      ...Imported
      findings {
        code
        words
      }
    }
  }
`);
const ImportFarms = graphql(`
  mutation ImportFarms($input: ImportInput!) {
    importFarms(input: $input) {
      ...Imported
    }
  }
`);
const ImportQuotes = graphql(`
  mutation ImportQuotes($input: ImportInput!) {
    importQuotes(input: $input) {
      ...Imported
    }
  }
`);
const LATITUDE = { least: -90, most: 90, such: '44.6' };
const HEIGHT = { least: -500, most: 6000, such: '310' };

export function ImportPage() {
  const queries = useQueryClient();
  const [kind, setKind] = useState<ImportKind>('farms');
  const [file, setFile] = useState<Chosen>({ name: PASTED, text: '' });
  const [typed, set] = useState({ name: '', latitude: '', elevation: '', unit: '', fuel: 'PROPANE', priceUnit: 'gal', market: 'RETAIL' });
  const [goodRowsOnly, setGood] = useState(false);
  const input = (checkOnly: boolean): ImportInput => ({
    requestId: requestId(),
    fileName: file.name,
    text: file.uploadId ? null : file.text,
    uploadId: file.uploadId ?? null,
    name: typed.name,
    goodRowsOnly,
    checkOnly,
    unit: typed.unit || null,
    latitudeDeg: readNumber(typed.latitude, LATITUDE).value,
    elevationM: readNumber(typed.elevation, HEIGHT).value,
    fuel: typed.fuel as 'PROPANE',
    priceUnit: typed.priceUnit,
    market: typed.market as 'RETAIL',
  });
  const run = useMutation({
    mutationFn: async (checkOnly: boolean) =>
      kind === 'farms'
        ? { ...(await ask(ImportFarms, { input: input(checkOnly) })).importFarms, findings: null }
        : kind === 'quotes'
          ? { ...(await ask(ImportQuotes, { input: input(checkOnly) })).importQuotes, findings: null }
          : kind === 'weather'
            ? { ...(await ask(ImportWeather, { input: input(checkOnly) })).importWeather, findings: null }
            : kind === 'normals'
              ? { ...(await ask(ImportNormals, { input: input(checkOnly) })).importNormals, findings: null }
              : (await ask(ImportPrices, { input: input(checkOnly) })).importPrices,
    onSuccess: (d) => (d.kept ? queries.invalidateQueries() : undefined),
  });
  const found = run.data;
  const wrong =
    kind === 'weather' && (readNumber(typed.latitude, LATITUDE).fault ?? readNumber(typed.elevation, HEIGHT).fault) !== undefined;
  const text = (key: keyof typeof typed, label: string) => (
    <Field
      label={label}
      value={typed[key]}
      change={(v) => set({ ...typed, [key]: v })}
      name={key}
      faults={[]}
      number={key === 'latitude' ? LATITUDE : key === 'elevation' ? HEIGHT : undefined}
    />
  );
  return (
    <>
      <h1>Bring in farms and houses, quotes, a real winter record, monthly normals or a price record.</h1>
      <p className="lead">
        Nothing is kept before you say so. A wrong file shows what is wrong in it, line by line, and leaves everything as it was.
      </p>
      <section>
        <div className="form">
          <label>
            <span>what it is</span>
            <select
              value={kind}
              onChange={(e) => {
                setKind(e.target.value as ImportKind);
                set({ ...typed, unit: '' });
                setFile({ name: PASTED, text: '' });
                run.reset();
              }}
            >
              <option value="farms">farms and houses (a row a house)</option>
              <option value="quotes">quotes of many farms (a row a house and retrofit)</option>
              <option value="weather">daily weather (NOAA: CSV with a head, or by-station rows)</option>
              <option value="normals">monthly normals of a station (where no daily or hourly record is to be had)</option>
              <option value="prices">monthly prices (month and price; EIA and BLS layouts)</option>
            </select>
          </label>
          <FileChoice
            key={kind}
            kind={kind}
            chosen={(f) => {
              setFile(f);
              run.reset();
            }}
          />
          {kind === 'farms' && (
            <label>
              <span>units of the sheet, where it does not say</span>
              <select value={typed.unit} onChange={(e) => set({ ...typed, unit: e.target.value })}>
                <option value="">told by the sheet</option>
                <option value="US">feet, Fahrenheit, Btu/h, gallons</option>
                <option value="SI">metres, Celsius, kW, litres</option>
              </select>
            </label>
          )}
          {kind !== 'farms' && kind !== 'quotes' && text('name', 'name to keep it under')}
          {kind === 'farms' || kind === 'quotes' ? null : kind !== 'prices' ? (
            <>
              {text('latitude', 'latitude, degrees north')}
              {text('elevation', 'height, m')}
              <label>
                <span>unit of the temperatures</span>
                <select value={typed.unit} onChange={(e) => set({ ...typed, unit: e.target.value })}>
                  <option value="">told by the file</option>
                  <option value="F">Fahrenheit</option>
                  <option value="C">Celsius</option>
                  <option value="tenths">tenths of Celsius</option>
                </select>
              </label>
            </>
          ) : (
            <>
              <label>
                <span>fuel</span>
                <select value={typed.fuel} onChange={(e) => set({ ...typed, fuel: e.target.value })}>
                  <option value="NATURAL_GAS">natural gas</option>
                  <option value="PROPANE">propane</option>
                  <option value="FUEL_OIL">No. 2 oil</option>
                  <option value="ELECTRICITY">electricity</option>
                </select>
              </label>
              {text('priceUnit', 'dollars a: gal, therm, mcf, kWh')}
              <label>
                <span>where the price is made</span>
                <select value={typed.market} onChange={(e) => set({ ...typed, market: e.target.value })}>
                  <option value="RETAIL">delivered: what a user pays</option>
                  <option value="WHOLESALE">at a hub or harbour: wholesale</option>
                </select>
              </label>
            </>
          )}
        </div>
        <PastedText
          text={file.text}
          rows={5}
          change={(text) => {
            setFile({ name: text === '' ? PASTED : typedOver(file.name), text });
            run.reset();
          }}
        />
        {(kind === 'farms' || kind === 'quotes') && <SheetToFill kind={kind} />}
        {kind === 'normals' && <NormalsExample />}
        <button
          className="filled"
          aria-describedby="import-lacks"
          disabled={!(file.text || file.uploadId) || run.isPending || wrong}
          onClick={() => run.mutate(true)}
        >
          Look at the file
        </button>{' '}
        <Lacking
          id="import-lacks"
          what={[
            !(file.text || file.uploadId) && 'a file, or its text pasted above',
            wrong && 'an answer that can be right where a field says what is wrong',
          ]}
        />
        {run.isPending && <p className="quiet">Reading the file.</p>}
        {run.error && <p className="fault">{run.error.message}</p>}
      </section>
      {found && (
        <section aria-live="polite">
          <h2>
            {found.kept ? 'Kept' : 'Found'}: {found.summary}
          </h2>
          <p className="caption">
            {counted(found.rows, 'row')}, {counted(found.faults.length, 'fault')}.
          </p>
          {found.faults.length > 0 && (
            <LedgerTable name="faults of the file">
              <thead>
                <tr>
                  <th scope="col" className="n">
                    line
                  </th>
                  <th scope="col" className="n">
                    column
                  </th>
                  <th scope="col">what is wrong</th>
                  <th scope="col">what would be right</th>
                </tr>
              </thead>
              <tbody>
                {found.faults.slice(0, 200).map((f, i) => (
                  <tr key={i}>
                    <td className="n">{f.line}</td>
                    <td className="n">{f.column}</td>
                    <td>{f.message}</td>
                    <td>{f.remedy}</td>
                  </tr>
                ))}
              </tbody>
            </LedgerTable>
          )}
          {found.findings && (
            <>
              <h3>What this record says, and what it cannot</h3>
              <Findings findings={found.findings} open />
            </>
          )}
          {found.kept && <KeptNext kind={kind} />}
          {!found.kept && found.rows > 0 && !found.canImport && <p>Nothing of it can be imported as it stands.</p>}
          {!found.kept && found.canImport && (
            <p>
              {found.faults.length > 0 && (
                <label style={{ display: 'inline' }}>
                  <input type="checkbox" style={{ minHeight: 0 }} checked={goodRowsOnly} onChange={(e) => setGood(e.target.checked)} /> keep
                  the good rows only{' '}
                </label>
              )}
              <button className="filled" disabled={run.isPending} onClick={() => run.mutate(false)}>
                Import {goodRowsOnly ? 'the good rows' : counted(found.rows, 'row')}
              </button>
              <NothingKept asked={run.variables === false && !goodRowsOnly} />
            </p>
          )}
        </section>
      )}
    </>
  );
}
