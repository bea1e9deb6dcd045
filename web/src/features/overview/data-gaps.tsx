import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { dollars, figure } from '../../lib/units/format.ts';
import { NumberHead } from '../../components/number-head.tsx';

const Gaps = graphql(`
  query DataGaps($first: Int!) {
    coop {
      dataGapTotal
      dataGaps(first: $first) {
        kind
        where
        what
        houseId
        worthUsd
      }
    }
  }
`);

const SHOWN = 8;
const MOST = 200;

/** What the data lacks, what each gap is worth in dollars of doubt a season, and where to mend it. */
export function DataGaps() {
  const [all, showAll] = useState(false);
  const { data, error } = useQuery({
    queryKey: ['data-gaps', all],
    queryFn: () => ask(Gaps, { first: all ? MOST : SHOWN }),
    placeholderData: (d) => d,
  });
  const total = data?.coop.dataGapTotal ?? 0;
  const gaps = data?.coop.dataGaps ?? [];
  return (
    <section>
      <h2>What the data lacks</h2>
      <p className="caption">
        Sorted by worth: how far a season&apos;s fuel may be off for want of it, from one in ten low to one in ten high.
      </p>
      {error && <p className="fault">{error.message}</p>}
      {!data && !error && <p className="quiet small">Weighing what is not known.</p>}
      {data && gaps.length === 0 && <p>Nothing: every house has a record and no default stands in.</p>}
      {gaps.length > 0 && (
        <LedgerTable name="what the data lacks" className="stack">
          <thead>
            <tr>
              <th scope="col">where</th>
              <th scope="col">what</th>
              <NumberHead over="worth" under="$ a season" />
              <th scope="col" className="controls">
                mend it
              </th>
            </tr>
          </thead>
          <tbody>
            {gaps.map((g) => (
              <tr key={g.where + g.what}>
                <td>{g.where}</td>
                <td className="note">{g.what}</td>
                <td className="n chief">
                  {g.worthUsd == null ? (
                    ''
                  ) : (
                    <>
                      <span className="wide">{figure(g.worthUsd, 2)}</span>
                      <span className="phone">{dollars(g.worthUsd, 2)}</span>
                    </>
                  )}
                </td>
                <td className="controls">
                  {g.houseId ? (
                    <Link to={`/houses/${g.houseId}`}>
                      enter<span className="hidden"> for {g.where}</span>
                    </Link>
                  ) : (
                    <Link to={g.kind === 'station' ? '/winters' : g.kind === 'price' ? '/import' : '/farms'}>
                      see<span className="hidden"> {g.where}</span>
                    </Link>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </LedgerTable>
      )}
      {total > SHOWN && (
        <p className="below">
          <button className="link" aria-expanded={all} onClick={() => showAll(!all)}>
            {all ? 'fewer' : `${String(Math.min(MOST, total) - SHOWN)} more`}
          </button>
          {all && total > MOST ? ` The ${String(total - MOST)} worth least are not shown.` : ''}
        </p>
      )}
    </section>
  );
}
