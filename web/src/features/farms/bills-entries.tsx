import { Fragment } from 'react';
import { LedgerTable } from '../../components/ledger-table.tsx';
import type { BillsFragment } from '../../lib/graphql/generated/graphql.ts';
import { counted } from '../../lib/units/format.ts';
import { BillsLineActions } from './bills-line-actions.tsx';
import { day, lineCounts } from './bills-words.ts';

export type Entry = BillsFragment['entries'][number];

const states: Record<string, string> = {
  USED: 'counts',
  OPENS: 'opens the account',
  WAITING: 'waits',
  REPLACED: 'replaced',
  HELD: 'held',
};

/** Every line of the record with what became of it; nothing is left out of sight. */
export function BillsEntries({
  entries,
  confirm,
  takeOut,
  changeFactor,
}: {
  entries: readonly Entry[];
  confirm?: (no: number) => void;
  takeOut?: (no: number, reason: string | null) => void;
  changeFactor?: (no: number, factor: number | null) => void;
}) {
  return (
    <>
      <p className="caption">
        {counted(entries.length, 'line')}: {lineCounts(entries)}.
      </p>
      <LedgerTable name="tickets and bills" className="stack">
        <thead>
          <tr>
            <th scope="col">days</th>
            <th scope="col" className="n">
              quantity
            </th>
            <th scope="col">fill or read</th>
            <th scope="col" className="n">
              total $
            </th>
            <th scope="col">state and what is asked</th>
          </tr>
        </thead>
        <tbody>
          {entries.map((e) => (
            <tr key={e.no}>
              <td>{e.kind === 'DELIVERY' ? day(e.toOn) : `${day(e.fromOn)} to ${day(e.toOn)}`}</td>
              <td className="n">
                {e.onlyDollars ? 'from the money' : `${e.quantity.toLocaleString('en-US', { maximumFractionDigits: 1 })} ${e.unit}`}
                {e.thermsPerCcf != null && <span className="second">{e.thermsPerCcf} therms a Ccf</span>}
              </td>
              <td>{String(e.read).toLowerCase()}</td>
              <td className="n">{e.totalUsd?.toLocaleString('en-US', { maximumFractionDigits: 2 }) ?? ''}</td>
              <td>
                <b className={e.use === 'HELD' ? 'fault' : undefined}>{states[e.use]}</b>{' '}
                {e.why && !e.faults.some((f) => f.message === e.why) ? `${e.why} ` : ''}
                {e.faults.map((f) => (
                  <Fragment key={f.message}>
                    <span className="fault">
                      {f.message} {f.remedy}
                    </span>{' '}
                  </Fragment>
                ))}
                {confirm && takeOut && <BillsLineActions e={e} confirm={confirm} takeOut={takeOut} changeFactor={changeFactor} />}
              </td>
            </tr>
          ))}
        </tbody>
      </LedgerTable>
    </>
  );
}
