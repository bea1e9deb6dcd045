import { CostHead, CostInterval } from '../../components/charts/cost-interval.tsx';
import { Chief } from '../../components/chief.tsx';
import { LedgerTable } from '../../components/ledger-table.tsx';
import type { ExposureQuery as Answer } from '../../lib/graphql/generated/graphql.ts';
import { dollars, figure, heatUnit, priceOf, usdPerUnitIn, type Fuel } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { NumberHead } from '../../components/number-head.tsx';

export type Exposure = NonNullable<Answer['exposure']>;
export type Way = Exposure['ways'][number];

/** What the newest study finds for the first season with the doubt about the houses counted in, and how well they are known. */
export interface KnownCost {
  usd?: { p10: number; p50: number; p90: number };
  grades: readonly ('A' | 'B' | 'C')[];
}

/** How well the houses are known: what it does to the range, where a study can say it. */
function Known({ known: { usd, grades } }: { known: KnownCost }) {
  const worst = [...grades].sort().at(-1);
  return (
    <p>
      These ranges take the houses&apos; use as {worst === 'C' ? 'described; some have no bills' : 'their bills put it'}, in the middle.
      {usd ? (
        <>
          {' '}
          With the doubt about it counted in (data grade {worst}), the newest study puts the first season as bought now at{' '}
          <b>
            {dollars(usd.p10)} to {dollars(usd.p90)}
          </b>{' '}
          in eight of ten futures, middle {dollars(usd.p50)}.
        </>
      ) : (
        ' With the doubt about it counted in they are wider: see the Farms page.'
      )}
    </p>
  );
}

/** The same heat on every fuel and under every contract, side by side. */
export function ExposureWays({ e, own, most, known }: { e: Exposure; own: Way; most: number; known: KnownCost }) {
  const { units, say } = useUnits();
  return (
    <section>
      <h2>The same heat on every fuel and contract, {e.season}</h2>
      <p className="caption">
        Same winters, same futures, the same heat. Ways in quiet are reckoned here for comparison; nobody offered them. A new heater is not
        in the season&apos;s cost.
      </p>
      <Known known={known} />
      <div className="phone-only">
        <CostHead most={most} />
      </div>
      <LedgerTable name="table of ways to buy the same heat" className="stack">
        <thead>
          <tr>
            <th scope="col">way</th>
            <NumberHead over="middle" under="$ a season" />
            <th scope="col">
              <CostHead most={most} />
            </th>
            <NumberHead over="one in twenty" under="over, $" />
            <th scope="col" className="n">
              useful heat
              <br />$ a {heatUnit(units)}
            </th>
            <NumberHead over="against now" under="mean, $" />
            <NumberHead over="same cost as now" under="at $ a unit" />
            <NumberHead over="new heater" under="$" />
          </tr>
        </thead>
        <tbody>
          {e.ways.map((w) => (
            <tr key={w.key} className={w.isOwn ? 'chosen' : undefined}>
              <td>
                <span className={w.isReckoned ? 'quiet' : undefined}>
                  {w.isOwn ? <b>{w.name}</b> : w.isReckoned ? say(w.name) : w.name}
                </span>
                {(w.leftoverUsd > 1 || w.minimumUsd > 1) && (
                  <span className="second">
                    {w.leftoverUsd > 1 && `${dollars(w.leftoverUsd)} for fuel of the block not used. `}
                    {w.minimumUsd > 1 && `${dollars(w.minimumUsd)} for taking less than agreed.`}
                  </span>
                )}
              </td>
              <td className="n chief">
                <Chief usd={w.costUsd.p50} />
              </td>
              <td className="mark">
                <CostInterval cost={w.costUsd} most={most} fuel={w.fuel as Fuel} />
              </td>
              <td className="n" data-name="one in twenty over, $">
                {figure(w.costUsd.p95)}
              </td>
              <td className="n" data-name={`useful heat, $ a ${heatUnit(units)}`}>
                {usdPerUnitIn(w.usdPerMmbtu, 'MMBtu', units).toFixed(1)}
              </td>
              <td className="n" data-name="against now, $">
                {w.isOwn ? '' : Math.abs(w.lessUsd) < 1 ? '0' : `${figure(Math.abs(w.lessUsd), 2)} ${w.lessUsd > 0 ? 'less' : 'more'}`}
              </td>
              <td className="n" data-name="same cost as now at">
                {w.breakEvenUsdPerUnit && !w.isOwn ? priceOf(w.breakEvenUsdPerUnit, w.unit, units) : ''}
              </td>
              <td className="n" data-name="new heater, $">
                {w.heaterUsd > 0 ? figure(w.heaterUsd, 2) : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </LedgerTable>
      <p>
        A fixed price that costs what the index costs in the mean: <b>{priceOf(e.fairFixedUsdPerUnit, own.unit, units)}</b>; a dealer&apos;s
        offer above it is paid for calm.
      </p>
      <details className="small quiet">
        <summary>How this is reckoned</summary>
        <p>
          Heating values of {e.heatingValues}. Electricity counts no demand charge here. Wood pellets without a record of your own start at{' '}
          {say('$290 a ton')} or the assumptions&apos; level, flat in real money, and wander by a tenth a year (common practice, no source).
        </p>
      </details>
      <p className="caution">
        <b>Before a change of fuel or heater:</b> fuel lines, flues, wiring and tanks are work for licensed trades and follow the local
        code; a carbon monoxide alarm in every heated house. A block paid ahead is money with the dealer: ask what secures it.
      </p>
    </section>
  );
}
