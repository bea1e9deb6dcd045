import { useQuery } from '@tanstack/react-query';
import { Fragment } from 'react';
import { Link, useSearchParams } from 'react-router';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { FanChart } from '../../components/charts/fan-chart.tsx';
import { IntervalHead, IntervalMark } from '../../components/charts/interval-mark.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { dollars, figure, ofHundred } from '../../lib/units/format.ts';

const Funding = graphql(`
  query Funding($rules: FundingRulesInput!) {
    fundingOrder(rules: $rules) {
      availableUsd
      grantUsd
      nextAddsUsd
      savingUsd {
        p10
        p50
        p90
      }
      frontier {
        grantUsd
        savingP10
        savingP50
        savingP90
      }
      notEligible {
        why
        rule
        option {
          id
          title
          house {
            name
            farm {
              name
            }
          }
        }
      }
      rows {
        rank
        funded
        pinned
        fundedShare
        grantUsd
        ownPartUsd
        why
        option {
          id
          key
          title
          cautions
          house {
            id
            name
            dataGrade
            farm {
              name
            }
          }
        }
        result {
          outlayUsd
          savingUsd {
            p50
          }
          lastingPayback {
            p10Season
            p25Season
            p50Season
            p75Season
            p90Season
            neverShare
          }
          lossShare
        }
      }
    }
  }
`);

const usual = {
  budgetUsd: 50000,
  reserveShare: 10,
  costShare: 60,
  houseCapUsd: 9000,
  farmCapUsd: 14000,
  paybackSeasons: 10,
  confidence: 60,
};
type Rule = keyof typeof usual;
const merits = { NET_SAVING: 'saves members most', ENERGY: 'saves most heat', CO_2: 'saves most CO₂' } as const;

export function FundingPage() {
  const [params, setParams] = useSearchParams();
  const rule = (name: Rule) => Number(params.get(name) ?? usual[name]);
  const merit = (params.get('merit') ?? 'NET_SAVING') as keyof typeof merits;
  const set = (name: string, value: string) => {
    const next = new URLSearchParams(params);
    next.set(name, value);
    setParams(next, { replace: true });
  };
  const pins = (name: string) =>
    params
      .getAll(name)
      .map((p) => ({ houseId: p.split('~')[0] ?? '', optionKey: p.split('~')[1] ?? null, reason: 'set on the funding page' }));
  const toggle = (name: string, id: string) => {
    const next = new URLSearchParams(params);
    const all = next.getAll(name);
    next.delete(name);
    (all.includes(id) ? all.filter((x) => x !== id) : [...all, id]).forEach((x) => next.append(name, x));
    setParams(next, { replace: true });
  };
  const rules = {
    budgetUsd: rule('budgetUsd'),
    reserveShare: rule('reserveShare') / 100,
    costShare: rule('costShare') / 100,
    houseCapUsd: rule('houseCapUsd'),
    farmCapUsd: rule('farmCapUsd'),
    paybackSeasons: rule('paybackSeasons'),
    confidence: rule('confidence') / 100,
    merit,
    pinned: pins('pin'),
    excluded: pins('out'),
  };
  const { data, error } = useQuery({ queryKey: ['funding', rules], queryFn: () => ask(Funding, { rules }), placeholderData: (d) => d });
  const order = data?.fundingOrder;
  const field = (name: Rule, unit: string) => (
    <label style={{ display: 'inline' }}>
      {unit === '$' && '$'}
      <input
        className="inline"
        aria-label={name}
        type="number"
        min={0}
        defaultValue={rule(name)}
        key={rule(name)}
        onBlur={(e) => set(name, e.target.value)}
        onKeyDown={(e) => e.key === 'Enter' && set(name, e.currentTarget.value)}
      />
      {unit !== '$' && ` ${unit}`}
    </label>
  );
  const funded = order?.rows.filter((r) => r.funded) ?? [];
  return (
    <>
      {order ? (
        <h1>
          {dollars(rules.budgetUsd)} funds <b>{funded.length} houses</b> and saves members <b>{dollars(order.savingUsd.p50)}</b> a season{' '}
          <b>
            ({dollars(order.savingUsd.p10)} to {dollars(order.savingUsd.p90)})
          </b>
          ; the next $10,000 would add <b>{dollars(order.nextAddsUsd)}</b>.
        </h1>
      ) : (
        <h1>{error ? 'These rules cannot be used.' : data ? 'The order needs a study that is up to date.' : 'Reading the order.'}</h1>
      )}
      {error && <p className="fault">{error.message}</p>}
      {data && !order && <p className="lead">Something changed since the newest study, or none is done: run one by the line above.</p>}
      <div className="rules">
        <section>
          <h2>Rules of this round</h2>
          <p>
            The budget is {field('budgetUsd', '$')}; {field('reserveShare', '%')} is held for overruns and errors.
          </p>
          <p>
            A grant covers {field('costShare', '%')} of the cost, at most {field('houseCapUsd', '$')} a house and {field('farmCapUsd', '$')}{' '}
            a farm and its relations.
          </p>
          <p>
            An option must have paid itself back, and stay so, by season {field('paybackSeasons', '')} in at least{' '}
            {field('confidence', 'of 100')} futures. The grant is not counted.
          </p>
          <label>
            <span>First comes what, per grant dollar,</span>
            <select value={merit} onChange={(e) => set('merit', e.target.value)}>
              {Object.entries(merits).map(([k, v]) => (
                <option key={k} value={k}>
                  {v}
                </option>
              ))}
            </select>
          </label>
          <p className="small quiet">Green figures can be changed; the list sorts anew, and the address keeps the rules.</p>
          <p className="small caution">
            <b>Caution.</b> Sealing and covering houses with burners inside needs ducted air and a carbon monoxide alarm; curtains and foam
            need someone who opens them before snow. Licensed trades, local codes. Savings are uncertain: money lent against them can be
            lost.
          </p>
        </section>
        <section>
          <h2>Funding order</h2>
          <p className="caption">
            Thin line: from one in ten lower to one in ten higher. Thick: the middle half. Dot: middle. The dashed line is the confidence
            rule, season {rules.paybackSeasons}.
          </p>
          <div className="scroll" role="region" aria-label="table, scrolls sideways" tabIndex={0}>
            <table className="stack">
              <thead>
                <tr>
                  <th scope="col">farm, house, option</th>
                  <th scope="col">
                    <IntervalHead />
                  </th>
                  <th scope="col">
                    data
                    <br />
                    grade
                  </th>
                  <th scope="col" className="n">
                    funded, of 100
                    <br />
                    single futures
                  </th>
                  <th scope="col" className="n">
                    saves a<br />
                    season, $
                  </th>
                  <th scope="col" className="n">
                    whole
                    <br />
                    cost, $
                  </th>
                  <th scope="col" className="n">
                    grant
                    <br />$
                  </th>
                  <th scope="col" className="n">
                    own
                    <br />
                    part, $
                  </th>
                  <th scope="col">committee</th>
                </tr>
              </thead>
              <tbody>
                {order?.rows.slice(0, funded.length + 8).map((r, i) => (
                  <Fragment key={r.option.id}>
                    {i === funded.length && (
                      <tr className="line">
                        <td colSpan={4}>
                          Budget line: of {dollars(order.availableUsd)} that can be given now,{' '}
                          {dollars(order.availableUsd - order.grantUsd)} is left
                        </td>
                        <td className="n">{figure(order.savingUsd.p50)}</td>
                        <td className="n">{figure(funded.reduce((s, x) => s + x.result.outlayUsd, 0))}</td>
                        <td className="n">{figure(order.grantUsd)}</td>
                        <td className="n">{figure(funded.reduce((s, x) => s + x.ownPartUsd, 0))}</td>
                        <td />
                      </tr>
                    )}
                    <tr>
                      <td>
                        <Link to={`/options/${encodeURIComponent(r.option.id)}`}>
                          <b>{r.option.house.farm.name}</b>, {r.option.house.name}
                        </Link>
                        <span className="second">
                          {r.option.title}; {r.why}
                        </span>
                      </td>
                      <td className="mark">
                        <IntervalMark payback={r.result.lastingPayback} rule={rules.paybackSeasons} />
                      </td>
                      <td data-name="data grade">
                        {r.option.house.dataGrade}
                        {r.option.house.dataGrade === 'C' && r.funded ? <span className="second">if bills come</span> : null}
                      </td>
                      <td className="n" data-name="funded in, of 100">
                        {ofHundred(r.fundedShare)}
                      </td>
                      <td className="n" data-name="saves a season, $">
                        {figure(r.result.savingUsd.p50)}
                      </td>
                      <td className="n" data-name="whole cost, $">
                        {figure(r.result.outlayUsd)}
                      </td>
                      <td className="n" data-name="grant, $">
                        <b>{figure(r.grantUsd)}</b>
                      </td>
                      <td className="n" data-name="own part, $">
                        {figure(r.ownPartUsd)}
                      </td>
                      <td className="small">
                        <button
                          className="link"
                          aria-pressed={r.pinned}
                          onClick={() => toggle('pin', `${r.option.house.id}~${r.option.key}`)}
                        >
                          {r.pinned ? 'unpin' : 'pin'}
                        </button>{' '}
                        <button className="link" onClick={() => toggle('out', `${r.option.house.id}~${r.option.key}`)}>
                          leave out
                        </button>
                      </td>
                    </tr>
                  </Fragment>
                ))}
              </tbody>
            </table>
          </div>
          {params.getAll('out').length > 0 && (
            <p className="below">
              Left out:{' '}
              {params.getAll('out').map((o) => (
                <button key={o} className="link" onClick={() => toggle('out', o)}>
                  take {o.split('~')[1]} back in
                </button>
              ))}
            </p>
          )}
        </section>
      </div>
      {order && (
        <div className="two">
          <section>
            <ChartFrame
              title="What more money would buy"
              caption="Saving of all members a season against grant money given, best order for each sum."
              table={{
                heads: ['grant money, $', 'one in ten under, $', 'middle, $', 'one in ten over, $'],
                rows: order.frontier.map((f) => [figure(f.grantUsd), figure(f.savingP10), figure(f.savingP50), figure(f.savingP90)]),
              }}
            >
              <FanChart
                points={order.frontier.map((f) => ({
                  name: dollars(f.grantUsd, 2),
                  at: f.grantUsd,
                  p10: f.savingP10,
                  p25: f.savingP50,
                  p50: f.savingP50,
                  p75: f.savingP50,
                  p90: f.savingP90,
                }))}
                format={(v) => dollars(v)}
              />
            </ChartFrame>
          </section>
          <section>
            <h2>Why not these</h2>
            <p className="caption">The next below the line, and those that a rule keeps out.</p>
            {order.rows.slice(funded.length, funded.length + 3).map((r) => (
              <p key={r.option.id}>
                <b>
                  {r.option.house.farm.name}, {r.option.house.name}
                </b>{' '}
                {r.why}.
              </p>
            ))}
            {order.notEligible.slice(0, 6).map((n) => (
              <p key={n.option.id}>
                <b>
                  {n.option.house.farm.name}, {n.option.house.name}
                </b>
                , {n.option.title.toLowerCase()}: {n.why}.
              </p>
            ))}
          </section>
        </div>
      )}
    </>
  );
}
