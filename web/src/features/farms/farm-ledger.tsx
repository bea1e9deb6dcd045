import { useState } from 'react';
import { Link } from 'react-router';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { CostHead, CostInterval } from '../../components/charts/cost-interval.tsx';
import { GradeMark } from '../../components/grade-mark.tsx';
import type { FarmsQuery } from '../../lib/graphql/generated/graphql.ts';
import { area, dollars, figure, fuelName, ofHundred } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { NumberHead } from '../../components/number-head.tsx';

type Farm = FarmsQuery['coop']['farms']['items'][number];
type Order = 'name' | 'cost' | 'area';

const FOOT2 = 0.09290304;
const cost = (f: Farm) => f.bills.reduce((s, b) => s + b.usd.p50, 0);
const perArea = (f: Farm) => (f.floorAreaM2 > 0 ? cost(f) / f.floorAreaM2 : 0);

/** One row a bill: what a farm's tank or meter costs in the first season, as an interval, and what is worth most on the farm. */
export function FarmLedger({ farms }: { farms: Farm[] }) {
  const { units } = useUnits();
  const [order, setOrder] = useState<Order>('name');
  const most = Math.max(1, ...farms.flatMap((f) => f.bills.map((b) => b.usd.p90)));
  const sorted = order === 'name' ? farms : [...farms].sort((p, q) => (order === 'cost' ? cost(q) - cost(p) : perArea(q) - perArea(p)));
  const head = (by: Order, words: string) => (
    <button className="link" aria-pressed={order === by} onClick={() => setOrder(by)}>
      {words}
    </button>
  );
  return (
    <section>
      <h2>What each pays for its heat</h2>
      <p className="caption">
        The first season of the newest study, houses as they stand, one bill a tank or meter. Thin from one in ten to nine in ten, thick the
        middle half.
      </p>
      <LedgerTable name="farms and houses" className="stack">
        <thead>
          <tr>
            <th scope="col" aria-sort={order === 'name' ? 'ascending' : 'none'}>
              {head('name', 'farm')}, houses
            </th>
            <th scope="col">bought by</th>
            <th scope="col" className="mark">
              {farms.some((f) => f.bills.length > 0) ? <CostHead most={most} /> : 'what it costs'}
            </th>
            <th scope="col" className="n" aria-sort={order === 'cost' ? 'descending' : 'none'}>
              {head('cost', 'middling season')}
              <br />$
            </th>
            <NumberHead over="one in ten" under="over, $" />
            <th scope="col" className="n" aria-sort={order === 'area' ? 'descending' : 'none'}>
              {head('area', 'floor costs')}
              <br />$ {units === 'us' ? 'a ft²' : 'a m²'}
            </th>
            <th scope="col">data grade</th>
            <th scope="col">worth most</th>
          </tr>
        </thead>
        <tbody>
          {sorted.map((f) => (
            <FarmRows key={f.id} farm={f} most={most} />
          ))}
        </tbody>
      </LedgerTable>
    </section>
  );
}

function FarmRows({ farm, most }: { farm: Farm; most: number }) {
  const { units, say } = useUnits();
  const best = farm.worthMost;
  const paid = best?.result?.lastingPayback;
  const grades = [...new Set(farm.houses.map((h) => h.dataGrade))].sort();
  const name = (
    <>
      <Link to={`/farms/${farm.id}`}>
        <b>{farm.name}</b>
      </Link>
      <span className="second">
        {farm.place ? `${farm.place}; ` : ''}
        {area(farm.floorAreaM2, units)}:{' '}
        {farm.houses.map((h, i) => (
          <span key={h.id}>
            {i > 0 ? ', ' : ''}
            <Link to={`/houses/${h.id}`}>{h.name}</Link>
          </span>
        ))}
        {farm.houses.length === 0 && 'no house yet'}
      </span>
    </>
  );
  if (farm.bills.length === 0)
    return (
      <tr>
        <td>{name}</td>
        <td colSpan={7} className="quiet">
          {farm.houses.length === 0
            ? 'nothing to reckon yet'
            : farm.stationName
              ? 'not in the newest study: run one'
              : 'no weather station chosen, so nothing can be reckoned: choose one on the farm'}
        </td>
      </tr>
    );
  return farm.bills.map((b, i) => (
    <tr key={b.houseIds.join()}>
      <td>{i === 0 ? name : <span className="quiet">{farm.name}</span>}</td>
      <td>
        {b.supplies.map((s) => (
          <span key={s.id} style={{ display: 'block' }}>
            <Link to={`/supplies/${s.id}`}>{fuelName[s.fuel]}</Link>
            <span className="second">{s.name}</span>
          </span>
        ))}
      </td>
      <td className="mark">
        <CostInterval cost={b.usd} most={most} fuel={b.supplies[0]?.fuel ?? 'PROPANE'} />
      </td>
      <td className="n chief" data-name="middling season, $">
        {figure(b.usd.p50)}
      </td>
      <td className="n" data-name="one in ten over, $">
        {figure(b.usd.p90)}
      </td>
      <td className="n" data-name={units === 'us' ? '$ a ft²' : '$ a m²'}>
        {((b.usd.p50 / b.floorAreaM2) * (units === 'us' ? FOOT2 : 1)).toFixed(2)}
      </td>
      <td>
        {i === 0 &&
          grades.map((g) => (
            <span key={g} style={{ marginRight: 8 }}>
              <GradeMark grade={g} />
            </span>
          ))}
      </td>
      <td className="note">
        {i === 0 && best?.result && (
          <>
            <Link to={`/options/${best.id}`}>{say(best.title)}</Link>
            <span className="second">
              {best.house.name}: {dollars(best.result.savingUsd.p50)} a season,{' '}
              {paid?.p50Season ? `back in season ${String(paid.p50Season)}` : 'not back in the middle future'}, never in{' '}
              {ofHundred(paid?.neverShare ?? 0)} of 100
            </span>
          </>
        )}
      </td>
    </tr>
  ));
}
