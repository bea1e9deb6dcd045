import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { NothingKept } from '../../components/forms/nothing-kept.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { Fuel } from '../../lib/units/format.ts';
import { ImportFuelRecord } from './bills-queries.ts';
import { BillsVerdict } from './bills-verdict.tsx';

/** Tickets or bills from a sheet: pasted or from a file, looked at first, then added. */
export function BillsPaste({ supplyId, fuel, kind, close }: { supplyId: string; fuel: Fuel; kind: string; close: () => void }) {
  const [text, setText] = useState('');
  const [file, setFile] = useState('pasted sheet');
  const [unit, setUnit] = useState('');
  const [goodOnly, setGoodOnly] = useState(false);
  const queries = useQueryClient();
  const run = useMutation({
    mutationFn: (checkOnly: boolean) =>
      ask(ImportFuelRecord, {
        input: {
          supplyGroupId: supplyId,
          requestId: requestId(),
          text,
          fileName: file,
          unit: unit || null,
          checkOnly,
          goodRowsOnly: goodOnly,
        },
      }),
    onSuccess: async (d) => {
      if (d.importFuelRecord.changeId) {
        await queries.invalidateQueries();
        close();
      }
    },
  });
  const found = run.data?.importFuelRecord;
  const example =
    kind === 'TANK'
      ? 'date, quantity, unit, kind, price, fees, total, gauge before, gauge after'
      : 'from, to, quantity, unit, read kind, therm factor, total';
  return (
    <section aria-label="bring in tickets or bills">
      <h2>Bring in tickets or bills</h2>
      <p className="caption">
        Paste a sheet with a head such as: {example}. Any order; dates as 2024-02-17 or 2/17/2024. A dealer&apos;s sheet will do: date,
        degree days, K-factor, base (F) give gallons known to 15 %. Nothing is saved before you have seen it.
      </p>
      <label>
        <span>the sheet</span>
        <textarea rows={8} value={text} onChange={(e) => setText(e.target.value)} />
      </label>
      <div className="form">
        <label>
          <span>or a CSV file</span>
          <input
            type="file"
            accept=".csv,.txt"
            onChange={(e) => {
              const chosen = e.target.files?.[0];
              if (chosen) {
                setFile(chosen.name);
                void chosen.text().then(setText);
              }
            }}
          />
        </label>
        <label>
          <span>unit, where the sheet tells none</span>
          <input value={unit} onChange={(e) => setUnit(e.target.value)} />
        </label>
      </div>
      <button
        className={found?.preview ? 'link' : 'filled'}
        aria-describedby="sheet-lacks"
        disabled={!text.trim() || run.isPending}
        onClick={() => run.mutate(true)}
      >
        Look at the sheet
      </button>{' '}
      <Lacking id="sheet-lacks" what={[!text.trim() && 'a sheet, pasted or as a file']} />{' '}
      <button className="link" onClick={close}>
        leave it
      </button>
      {run.error && <p className="fault">{run.error.message}</p>}
      {found && <p>{found.words}</p>}
      {found && found.faults.length > 0 && (
        <LedgerTable name="faults of the sheet">
          <thead>
            <tr>
              <th scope="col" className="n">
                line
              </th>
              <th scope="col" className="n">
                column
              </th>
              <th scope="col">what is wrong, and what would be right</th>
            </tr>
          </thead>
          <tbody>
            {found.faults.map((f, i) => (
              <tr key={`${String(f.line)} ${String(i)}`}>
                <td className="n">{f.line ?? ''}</td>
                <td className="n">{f.column ?? ''}</td>
                <td>
                  {f.message} {f.remedy}
                </td>
              </tr>
            ))}
          </tbody>
        </LedgerTable>
      )}
      {found?.preview && (
        <>
          <h2>With these rows</h2>
          <BillsVerdict bills={found.preview} fuel={fuel} />
          {found.faults.length > 0 && (
            <label style={{ display: 'flex', gap: 8 }}>
              <input type="checkbox" style={{ width: 'auto' }} checked={goodOnly} onChange={(e) => setGoodOnly(e.target.checked)} />
              <span>add the good rows only; the faulty ones stay out</span>
            </label>
          )}
          <button className="filled" disabled={run.isPending} onClick={() => run.mutate(false)}>
            Add the rows
          </button>
          <NothingKept asked={run.variables === false && !run.isPending && found.faults.length > 0 && !goodOnly} />
        </>
      )}
    </section>
  );
}
