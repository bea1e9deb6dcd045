import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { ask } from '../../lib/graphql/client.ts';
import type { ExposureQuery as Answer } from '../../lib/graphql/generated/graphql.ts';
import { counted, dollars, figure, fuelName, heat, heatUnit, ofHundred, type Fuel } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { CostHead, CostInterval } from '../../components/charts/cost-interval.tsx';
import { Field } from '../../components/forms/field.tsx';
import { readNumber } from '../../lib/units/typed-number.ts';
import { ExposureQuery } from './fuel-queries.ts';

type Exposure = NonNullable<Answer['exposure']>;
type Way = Exposure['ways'][number];

const price = (v: number) => `$${v.toFixed(v < 1 ? 3 : v < 100 ? 2 : 0)}`;
const CASH = { least: 0, most: 1e9, such: '30000' };
const because = { PRICE: 'the price', WINTER: 'the winter', BOTH: 'price and winter together' } as const;

/** What one farm's heating can cost: the same heat on every fuel and contract, what makes a season dear, and what takes it off. */
export function ExposurePart({ farmId }: { farmId: string }) {
  const { units } = useUnits();
  const [season, setSeason] = useState(0);
  const [typed, setTyped] = useState('');
  const [told, setTold] = useState('');
  const cashUsd = readNumber(told, CASH).fault === undefined ? readNumber(told, CASH).value : null;
  const { data, error } = useQuery({
    queryKey: ['exposure', farmId, season, cashUsd],
    queryFn: () => ask(ExposureQuery, { farmId, season, cashUsd }),
    placeholderData: (d) => d,
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Settling the season on every future.</p>;
  const e = data.exposure;
  const own = e?.ways.find((w) => w.isOwn);
  if (!e || !own) return <p>This farm&apos;s heat cannot be reckoned yet: it needs a house, a weather station with winters, and prices.</p>;
  const most = Math.max(...e.ways.map((w) => w.costUsd.p95)) * 1.05;
  const cheapest = e.ways
    .filter((w) => w.fuel !== own.fuel && w.fuel !== 'WOOD_PELLETS')
    .reduce<Way | undefined>((a, w) => (a && a.costUsd.p90 <= w.costUsd.p90 ? a : w), undefined);
  return (
    <>
      <p className="lead">
        On {fuelName[own.fuel]}, one winter in ten costs {e.name} over <b>{dollars(own.costUsd.p90)}</b>
        {cheapest && (
          <>
            ; the same heat on {cheapest.name.replace(', on its index', '')} would be over {dollars(cheapest.costUsd.p90)}
          </>
        )}
        . The middle season is <b>{dollars(own.costUsd.p50)}</b> for {heat(e.heatKwh.p50, units)} {heatUnit(units)} of heat.
      </p>
      <p className="switches" role="group" aria-label="season">
        {[0, 1, 2, 4].map((s) => (
          <button key={s} aria-pressed={s === season} onClick={() => setSeason(s)}>
            {s === 0 ? 'next season' : `in ${counted(s + 1, 'season')}`}
          </button>
        ))}
      </p>
      {e.leftOut.map((l) => (
        <p className="fault" key={l}>
          {l}
        </p>
      ))}
      <Ways e={e} own={own} most={most} />
      <section>
        <h2>What makes a season dear</h2>
        <p>
          Of the dearest twentieth, the price made {ofHundred(e.priceShare)} of 100, the winter {ofHundred(e.winterShare)}, both{' '}
          {ofHundred(e.bothShare)}.
        </p>
        <ul>
          {e.dear.map((d, i) => (
            <li key={d.usd}>
              {['One in twenty', 'One in fifty', 'One in a hundred'][i]} costs {dollars(d.usd)} or more; for one such, {because[d.because]}{' '}
              did it: a winter like {d.winterName}, {signed(d.heatAgainstMiddlePct)} heat, and a price {signed(d.priceAgainstMiddlePct)} the
              middle one.
            </li>
          ))}
        </ul>
        <form
          className="form"
          onSubmit={(x) => {
            x.preventDefault();
            setTold(typed);
          }}
        >
          <Field
            label="cash set aside for a season's fuel, $"
            value={typed}
            change={setTyped}
            name="cashUsd"
            faults={[]}
            number={CASH}
            required
          />
          <button className="link">hold the season against it</button>
        </form>
        {e.cash && (
          <p>
            {dollars(e.cash.cashUsd)} is too little in <b>{ofHundred(e.cash.overShare)} of 100</b> futures, by{' '}
            {dollars(e.cash.meanShortUsd)} in the mean of those; in one of twenty {dollars(e.cash.shortOneInTwentyUsd)} or more is short.
          </p>
        )}
      </section>
      <Tail e={e} own={own} />
    </>
  );
}

const signed = (pct: number) => `${pct >= 0 ? `${String(Math.round(pct))} % over` : `${String(Math.round(-pct))} % under`}`;

function Ways({ e, own, most }: { e: Exposure; own: Way; most: number }) {
  return (
    <section>
      <h2>The same heat on every fuel and contract, {e.season}</h2>
      <p className="caption">
        Same winters, same futures, the houses&apos; use as the bills and the model put it in the middle: how well it is known is left out
        here and stands in the wider ranges of the Farms page. Heating values of {e.heatingValues}. Ways in quiet are reckoned here for
        comparison; nobody offered them. A new heater is not in the season&apos;s cost. Electricity counts no demand charge here. Wood
        pellets without a record of your own start at $290 a ton or the assumptions&apos; level, flat in real money, and wander by a tenth a
        year (common practice, no source). A fixed price that costs what the index costs in the mean: {price(e.fairFixedUsdPerUnit)} a{' '}
        {own.unit}; a dealer&apos;s offer above it is paid for calm.
      </p>
      <LedgerTable name="table of ways to buy the same heat" className="stack">
        <thead>
          <tr>
            <th scope="col">way</th>
            <th scope="col" className="n">
              middle
              <br />$ a season
            </th>
            <th scope="col">
              <CostHead most={most} />
            </th>
            <th scope="col" className="n">
              one in twenty
              <br />
              over, $
            </th>
            <th scope="col" className="n">
              useful heat
              <br />$ a MMBtu
            </th>
            <th scope="col" className="n">
              against now
              <br />
              mean, $
            </th>
            <th scope="col" className="n">
              same cost as now
              <br />
              at $ a unit
            </th>
            <th scope="col" className="n">
              new heater
              <br />$
            </th>
          </tr>
        </thead>
        <tbody>
          {e.ways.map((w) => (
            <tr key={w.key} className={w.isOwn ? 'chosen' : undefined}>
              <td>
                <span className={w.isReckoned ? 'quiet' : undefined}>{w.isOwn ? <b>{w.name}</b> : w.name}</span>
                {(w.leftoverUsd > 1 || w.minimumUsd > 1) && (
                  <span className="second">
                    {w.leftoverUsd > 1 && `${dollars(w.leftoverUsd)} for fuel of the block not used. `}
                    {w.minimumUsd > 1 && `${dollars(w.minimumUsd)} for taking less than agreed.`}
                  </span>
                )}
              </td>
              <td className="n chief">{figure(w.costUsd.p50)}</td>
              <td className="mark">
                <CostInterval cost={w.costUsd} most={most} fuel={w.fuel as Fuel} />
              </td>
              <td className="n" data-name="one in twenty over, $">
                {figure(w.costUsd.p95)}
              </td>
              <td className="n" data-name="useful heat, $ a MMBtu">
                {w.usdPerMmbtu.toFixed(1)}
              </td>
              <td className="n" data-name="against now, $">
                {w.isOwn ? '' : Math.abs(w.lessUsd) < 1 ? '0' : `${figure(Math.abs(w.lessUsd), 2)} ${w.lessUsd > 0 ? 'less' : 'more'}`}
              </td>
              <td className="n" data-name="same cost as now at">
                {w.breakEvenUsdPerUnit && !w.isOwn ? `${price(w.breakEvenUsdPerUnit)} a ${w.unit}` : ''}
              </td>
              <td className="n" data-name="new heater, $">
                {w.heaterUsd > 0 ? figure(w.heaterUsd, 2) : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </LedgerTable>
      <p className="caution">
        <b>Before a change of fuel or heater:</b> fuel lines, flues, wiring and tanks are work for licensed trades and follow the local
        code; a carbon monoxide alarm in every heated house. A block paid ahead is money with the dealer: ask what secures it.
      </p>
    </section>
  );
}

function Tail({ e, own }: { e: Exposure; own: Way }) {
  if (e.options.length === 0) return null;
  return (
    <section>
      <h2>What takes the worst off</h2>
      <p className="caption">
        Each option on every house that has it, under the contract as it is; its yearly cost is the outlay as a payment over its life, and
        running. It earns that where {fuelName[own.fuel]} costs more than the last column.
      </p>
      <LedgerTable name="table of what options take off" className="stack">
        <thead>
          <tr>
            <th scope="col">option</th>
            <th scope="col" className="n">
              off one season
              <br />
              in twenty, $
            </th>
            <th scope="col" className="n">
              off the mean
              <br />$ a season
            </th>
            <th scope="col" className="n">
              its own cost
              <br />$ a year
            </th>
            <th scope="col" className="n">
              earned over
              <br />$ a {own.unit}
            </th>
          </tr>
        </thead>
        <tbody>
          {e.options.map((o) => (
            <tr key={o.key}>
              <td>
                {o.title}
                <span className="second">
                  {o.houses} {o.houses === 1 ? 'house' : 'houses'}
                </span>
              </td>
              <td className="n chief">{figure(o.tailOffUsd)}</td>
              <td className="n" data-name="off the mean, $">
                {figure(o.meanOffUsd)}
              </td>
              <td className="n" data-name="its own cost, $ a year">
                {figure(o.yearlyUsd)}
              </td>
              <td className="n" data-name={`earned over, $ a ${own.unit}`}>
                {o.breakEvenUsdPerUnit ? o.breakEvenUsdPerUnit.toFixed(o.breakEvenUsdPerUnit < 1 ? 3 : 2) : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </LedgerTable>
    </section>
  );
}
