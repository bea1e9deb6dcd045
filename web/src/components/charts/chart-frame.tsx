import { useState, type ReactNode } from 'react';
import { LedgerTable } from '../ledger-table.tsx';
import { csvOf } from './csv.ts';

export interface ChartTable {
  heads: string[];
  rows: (string | number)[][];
}

/** One frame for every chart: name, what to see, the picture, the same numbers as a table and as a file. */
export function ChartFrame({
  title,
  caption,
  table,
  children,
}: {
  title: string;
  caption: string;
  table: ChartTable;
  children: ReactNode;
}) {
  const [open, setOpen] = useState(false);
  const csv = csvOf([table.heads, ...table.rows]);
  return (
    <figure style={{ margin: 0 }} aria-label={title}>
      <h2>{title}</h2>
      <p className="caption">{caption}</p>
      {children}
      <div className="below">
        <button className="link" aria-expanded={open} onClick={() => setOpen(!open)}>
          as a table
        </button>
        <a href={`data:text/csv;charset=utf-8,${encodeURIComponent(csv)}`} download={`${title.toLowerCase().replaceAll(' ', '-')}.csv`}>
          download
        </a>
      </div>
      {open && (
        <LedgerTable name={`${title}, as a table`} caption={<>{title}</>}>
          <thead>
            <tr>
              {table.heads.map((h) => (
                <th key={h} scope="col" className="n">
                  {h}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map((r) => (
              <tr key={String(r[0])}>
                {r.map((c, i) =>
                  i === 0 ? (
                    <th key={table.heads[i]} scope="row" className="n">
                      {c}
                    </th>
                  ) : (
                    <td key={table.heads[i]} className="n">
                      {c}
                    </td>
                  ),
                )}
              </tr>
            ))}
          </tbody>
        </LedgerTable>
      )}
    </figure>
  );
}
