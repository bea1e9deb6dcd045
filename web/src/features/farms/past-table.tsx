import { LedgerTable } from '../../components/ledger-table.tsx';
import type { PastFragment } from '../../lib/graphql/generated/graphql.ts';
import { bought, cents, months, price } from './past-words.ts';

/** Months down, ways across, dollars and cents. */
export function PastTable({ past }: { past: PastFragment }) {
  const ends = past.ways.some((w) => w.seasonEndUsd !== 0);
  return (
    <LedgerTable name="a past season by month">
      <thead>
        <tr>
          <th scope="col">month</th>
          <th scope="col" className="n">
            bought, {past.unit}
          </th>
          <th scope="col" className="n">
            paid, $
          </th>
          <th scope="col" className="n">
            index, $ a {past.unit}
          </th>
          {past.ways.map((w) => (
            <th key={w.key} scope="col" className="n">
              {w.name}, $
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {months(past).map((m) => (
          <tr key={m.month}>
            <td>{m.month}</td>
            <td className="n">{bought(m.units)}</td>
            <td className="n">{m.paidUsd == null ? '' : cents(m.paidUsd)}</td>
            <td className="n">
              {m.indexUsdPerUnit == null ? 'not on record' : price(m.indexUsdPerUnit)}
              {m.indexIsTyped ? ' (typed)' : ''}
            </td>
            {past.ways.map((w) => (
              <td key={w.key} className="n">
                {w.totalUsd == null ? '' : cents(w.monthsUsd[m.no] ?? 0)}
              </td>
            ))}
          </tr>
        ))}
        {ends && (
          <tr>
            <td>season&apos;s end</td>
            <td />
            <td />
            <td />
            {past.ways.map((w) => (
              <td key={w.key} className="n">
                {w.totalUsd == null ? '' : cents(w.seasonEndUsd)}
              </td>
            ))}
          </tr>
        )}
      </tbody>
      <tfoot>
        <tr>
          <td>season</td>
          <td className="n">{bought(past.months.reduce((sum, m) => sum + m.units, 0))}</td>
          <td className="n">{past.paidUsd == null ? '' : cents(past.paidUsd)}</td>
          <td />
          {past.ways.map((w) => (
            <td key={w.key} className="n">
              {w.totalUsd == null ? 'cannot be settled' : <b>{cents(w.totalUsd)}</b>}
            </td>
          ))}
        </tr>
      </tfoot>
    </LedgerTable>
  );
}
