import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { FanChart } from '../../components/charts/fan-chart.tsx';
import { IntervalHead, IntervalMark } from '../../components/charts/interval-mark.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { DataGaps } from './data-gaps.tsx';
import { GradeMark } from '../../components/grade-mark.tsx';
import { OrderWait } from '../../components/order-wait.tsx';
import { counted, dollars, figure, fuelName } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { NumberHead } from '../../components/number-head.tsx';

/** Houses and options left out that are named here. */
const LEFT_OUT = 8;

const Overview = graphql(`
  query Overview {
    coop {
      houseCount
      gradeCounts {
        a
        b
        c
      }
      newestStudy {
        seasonNames
        houseCount
        normalsOnly
        costUsdBySeason {
          p10
          p25
          p50
          p75
          p90
        }
        onePathUsdBySeason
        costByFuel {
          fuel
          houseCount
          firstSeasonUsd {
            p10
            p50
            p90
          }
        }
        leftOut {
          itemId
          message
          remedy
        }
      }
    }
  }
`);

/** Apart from the rest: after a start of the program it takes its time. */
const FirstTen = graphql(`
  query FirstTen {
    fundingOrder {
      grantUsd
      availableUsd
      savingUsd {
        p10
        p50
        p90
      }
      rows(first: 10) {
        rank
        funded
        grantUsd
        option {
          id
          title
          house {
            id
            name
            farm {
              name
            }
          }
        }
        result {
          lastingPayback {
            p10Season
            p25Season
            p50Season
            p75Season
            p90Season
            neverShare
          }
        }
      }
    }
  }
`);

export function OverviewPage() {
  const { say } = useUnits();
  const { data, error, isLoading } = useQuery({ queryKey: ['overview'], queryFn: () => ask(Overview) });
  const first10 = useQuery({ queryKey: ['first-ten'], queryFn: () => ask(FirstTen) });
  if (error) return <p className="fault">{error.message}</p>;
  if (isLoading || !data) return <p className="quiet">Reading the newest study.</p>;
  const study = data.coop.newestStudy;
  const first = study?.costUsdBySeason[0];
  if (!study || !first) {
    return (
      <>
        <h1>No study is done yet.</h1>
        <p className="lead">
          A study meets every house with the same ten thousand futures of winters and prices; the line above says how far it is.
        </p>
      </>
    );
  }
  const order = first10.data?.fundingOrder;
  const rows = order?.rows.filter((r) => r.funded) ?? [];
  const points = study.costUsdBySeason.map((d, i) => ({ name: study.seasonNames[i] ?? '', ...d, one: study.onePathUsdBySeason[i] }));
  const { a, b, c } = data.coop.gradeCounts;
  return (
    <>
      <h1>
        Heating the {study.houseCount === 1 ? 'one house' : counted(study.houseCount, 'house')} costs <b>{dollars(first.p50)}</b> in a
        middling season, and over <b>{dollars(first.p90)}</b> in one of ten.
      </h1>
      {study.normalsOnly.length > 0 && <p className="caution">{study.normalsOnly.join(' ')}</p>}
      {order && (
        <p className="lead">
          A round that gives {dollars(order.grantUsd)} would save members <b>{dollars(order.savingUsd.p50)}</b> a season in the middle of
          the futures ({dollars(order.savingUsd.p10)} to {dollars(order.savingUsd.p90)}), each taken over its {study.costUsdBySeason.length}{' '}
          seasons at their own prices.
        </p>
      )}
      <div className="two">
        <section>
          <ChartFrame
            title="What heating may cost the whole co-op"
            caption="Fuel of all houses as they stand, by season. The band widens with prices; within it each winter jumps."
            table={{
              heads: ['season', 'one in ten under, $', 'one in four under, $', 'middle, $', 'one in four over, $', 'one in ten over, $'],
              rows: points.map((p) => [p.name, figure(p.p10), figure(p.p25), figure(p.p50), figure(p.p75), figure(p.p90)]),
            }}
          >
            <FanChart points={points} format={(v) => dollars(v)} height={460} />
          </ChartFrame>
        </section>
        <section className="beside">
          <h2>What to fund first</h2>
          <p className="caption">
            The first ten by saving per grant dollar under the usual rules, each with its interval. Payback is reckoned on the whole cost,
            without the grant.
          </p>
          {first10.isLoading && <OrderWait />}
          {first10.error && <p className="fault">{first10.error.message}</p>}
          {!first10.isLoading && (
            <LedgerTable name="what to fund first" className="stack ranked">
              <thead>
                <tr>
                  <th scope="col">farm, house, option</th>
                  <th scope="col">
                    <IntervalHead />
                  </th>
                  <NumberHead over="grant" under="$" />
                </tr>
              </thead>
              <tbody>
                {rows.map((r) => (
                  <tr key={r.option.id}>
                    <td>
                      <span className="rank">{r.rank}</span>
                      <Link to={`/options/${encodeURIComponent(r.option.id)}`}>
                        <b>{r.option.house.farm.name}</b>, {r.option.house.name}
                      </Link>
                      <span className="second">{say(r.option.title)}</span>
                    </td>
                    <td className="mark">
                      <IntervalMark payback={r.result.lastingPayback} />
                    </td>
                    <td className="n" data-name="grant $">
                      {figure(r.grantUsd)}
                    </td>
                  </tr>
                ))}
              </tbody>
            </LedgerTable>
          )}
          <p className="below">
            <Link to="/funding">all of them, and why in this order</Link>
          </p>
        </section>
        <DataGaps />
        <section>
          <h2>How well the houses are known</h2>
          <p className="caption">The poorer the record, the wider a house&apos;s intervals: season totals 15 %, no record 30 %.</p>
          {(
            [
              ['A', a, 'metered, and met by the model'],
              ['B', b, 'bills or totals'],
              ['C', c, 'no fuel record'],
            ] as const
          ).map(([grade, count, words]) => (
            <p key={grade} className="small" style={{ margin: 0 }}>
              <GradeMark grade={grade} /> {count} {count === 1 ? 'house' : 'houses'}: {words}
            </p>
          ))}
          {study.leftOut.length > 0 && (
            <ul>
              {study.leftOut.slice(0, LEFT_OUT).map((l) => (
                <li key={l.itemId + l.message} className="small">
                  {l.message} {l.remedy}
                </li>
              ))}
              {study.leftOut.length > LEFT_OUT && (
                <li className="small">and {counted(study.leftOut.length - LEFT_OUT, 'more', 'more')}.</li>
              )}
            </ul>
          )}
        </section>
        <section>
          <h2>By fuel</h2>
          <p className="caption">The first season, as the houses stand.</p>
          <LedgerTable name="cost by fuel, first season">
            <thead>
              <tr>
                <th scope="col">fuel</th>
                <th scope="col" className="n">
                  houses
                </th>
                <NumberHead over="middle" under="$" />
                <NumberHead over="one in ten over" under="$" />
              </tr>
            </thead>
            <tbody>
              {study.costByFuel.map((f) => (
                <tr key={f.fuel}>
                  <td>{fuelName[f.fuel]}</td>
                  <td className="n">{f.houseCount}</td>
                  <td className="n">{figure(f.firstSeasonUsd.p50)}</td>
                  <td className="n">{figure(f.firstSeasonUsd.p90)}</td>
                </tr>
              ))}
            </tbody>
          </LedgerTable>
        </section>
      </div>
    </>
  );
}
