import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { ask } from '../../lib/graphql/client.ts';
import type { OwnPriceQuery } from '../../lib/graphql/generated/graphql.ts';
import { ContractForm } from './contract-form.tsx';
import type { Supply } from './contract-words.ts';
import { OwnPrice } from './own-price-queries.ts';
import { price } from './past-words.ts';

type Own = NonNullable<NonNullable<OwnPriceQuery['supplyGroup']>['ownPrice']>;

/** How the tickets' own price follows the index, and a way to make it the contract. */
export function OwnPricePart({ supply }: { supply: Supply }) {
  const [using, setUsing] = useState(false);
  const { data, error } = useQuery({
    queryKey: ['own-price', supply.id],
    queryFn: () => ask(OwnPrice, { id: supply.id }),
    placeholderData: (d) => d,
  });
  if (error) return <p className="fault">{error.message}</p>;
  const own = data?.supplyGroup?.ownPrice;
  if (!own) return null;
  const indexed = supply.contracts.find((c) => c.standing === 'IN_FORCE' && c.kind === 'INDEXED');
  const free = supply.contracts.every((c) => c.standing !== 'IN_FORCE');
  return (
    <section aria-label="your own price">
      <h2>Your own price against the index</h2>
      <p>{own.verdict}</p>
      {own.faults.map((f) => (
        <p key={f.message} className="caption">
          {f.message} {f.remedy}
        </p>
      ))}
      {own.tickets > 0 && <OwnTable own={own} />}
      {own.adderUsdPerUnit != null && !using && (
        <button className="link" onClick={() => setUsing(true)}>
          {indexed
            ? `make it the terms of ${indexed.name ?? 'the contract'}`
            : free
              ? 'make it the contract'
              : 'keep it as an offer to compare'}
        </button>
      )}
      {own.adderUsdPerUnit != null && using && (
        <ContractForm
          supply={supply}
          contract={indexed}
          offered={!indexed && !free}
          start={{
            kind: 'INDEXED',
            unit: own.unit,
            adderUsdPerUnit: String(Math.round(10000 * own.adderUsdPerUnit) / 10000),
            indexShare: String(Math.round(1000 * (own.indexShare ?? 1)) / 1000),
            scatterUsdPerUnit: own.scatterUsdPerUnit == null ? '' : String(Math.round(10000 * own.scatterUsdPerUnit) / 10000),
          }}
          close={() => setUsing(false)}
        />
      )}
    </section>
  );
}

function OwnTable({ own }: { own: Own }) {
  const rows: [string, number, number | null | undefined, number | null | undefined, number | null | undefined][] = [
    ['mean over the index', own.tickets, own.meanOverUsdPerUnit, 1, own.meanOverSdUsdPerUnit],
    ...(own.sameMonth
      ? [
          [
            'line on the same month',
            own.sameMonth.count,
            own.sameMonth.adderUsdPerUnit,
            own.sameMonth.indexShare,
            own.sameMonth.sdUsdPerUnit,
          ] as (typeof rows)[number],
        ]
      : []),
    ...(own.monthBefore
      ? [
          [
            'line on the month before',
            own.monthBefore.count,
            own.monthBefore.adderUsdPerUnit,
            own.monthBefore.indexShare,
            own.monthBefore.sdUsdPerUnit,
          ] as (typeof rows)[number],
        ]
      : []),
  ];
  return (
    <LedgerTable
      name="own price against the index"
      caption={
        <>
          Tickets less fees against {own.indexName}, delivered
          {own.withoutIndex > 0 && `; ${String(own.withoutIndex)} more lie in months without a price on record`}
        </>
      }
    >
      <thead>
        <tr>
          <th scope="col">what you pay, read from</th>
          <th scope="col" className="n">
            tickets
          </th>
          <th scope="col" className="n">
            added to the index, $ a {own.unit}
          </th>
          <th scope="col" className="n">
            times the index
          </th>
          <th scope="col" className="n">
            spread, $ a {own.unit}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([what, count, a, b, sd]) => (
          <tr key={what}>
            <td>{what}</td>
            <td className="n">{count}</td>
            <td className="n">{a == null ? '' : price(a)}</td>
            <td className="n">{b == null ? '' : b.toFixed(2)}</td>
            <td className="n">{sd == null ? '' : price(sd)}</td>
          </tr>
        ))}
      </tbody>
    </LedgerTable>
  );
}
