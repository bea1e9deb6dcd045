import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { PaybackBars } from '../../components/charts/bars.tsx';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { FanChart } from '../../components/charts/fan-chart.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { dollars, figure, ofHundred } from '../../lib/units/format.ts';

const OptionQuery = graphql(`
  query Option($id: ID!) {
    option(id: $id) {
      id
      key
      title
      outlayUsd
      outlayBasis
      runningUsd
      drawbacks
      cautions
      skills
      isRunningChange
      outlay {
        what
        usd
        field
      }
      running {
        what
        usd
        field
        quantity
        unit
      }
      house {
        id
        name
        optionSetRevision
        farm {
          name
        }
      }
      result {
        outlayUsd
        heatSavedShare
        lossShare
        notCounted
        onePathUsdBySeason
        startSeason
        savingUsd {
          p10
          p50
          p90
        }
        npvUsd {
          p10
          p50
          p90
        }
        netUsdBySeason {
          p10
          p25
          p50
          p75
          p90
        }
        lastingPayback {
          shareBySeason
          neverShare
          halfWidth
          p50Season
          p90Season
        }
        firstPayback {
          p50Season
          neverShare
        }
        discounted: lastingPayback(discounted: true) {
          p50Season
          neverShare
        }
      }
    }
  }
`);
const SaveOption = graphql(`
  mutation SaveOption($input: SaveOptionInput!) {
    saveOption(input: $input) {
      changeId
      conflict
      faults {
        message
        remedy
      }
    }
  }
`);

export function OptionPage() {
  const { optionId = '' } = useParams();
  const queries = useQueryClient();
  const { data, error } = useQuery({ queryKey: ['option', optionId], queryFn: () => ask(OptionQuery, { id: optionId }) });
  const save = useMutation({
    mutationFn: (input: Parameters<typeof ask<unknown, { input: object }>>[1]) => ask(SaveOption, input as never),
    onSuccess: () => queries.invalidateQueries(),
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the option.</p>;
  const option = data.option;
  if (!option)
    return (
      <p>
        There is no such option. <Link to="/farms">All farms</Link>
      </p>
    );
  const r = option.result;
  const own = (name: string) => option.running.find((l) => l.field === name);
  const change = (field: string, value: string) => {
    const amount = Number(value);
    if (!Number.isFinite(amount) || value.trim() === '') return;
    const input = {
      houseId: option.house.id,
      key: option.key,
      expectedRevision: option.house.optionSetRevision ?? 0,
      requestId: requestId(),
      outlayUsd: option.outlayBasis === 'own figure' ? option.outlayUsd : null,
      upkeepUsdPerYear: own('upkeepUsdPerYear')?.usd ?? null,
      watchingHoursPerWeek: own('watchingHoursPerWeek')?.quantity ?? null,
      consumablesUsdPerYear: own('consumablesUsdPerYear')?.usd ?? null,
      [field]: amount,
    };
    save.mutate({ input });
  };
  const editable = (field: string, value: number, label: string) => (
    <input
      className="inline"
      aria-label={label}
      type="number"
      step="any"
      min={0}
      defaultValue={Math.round(value * 100) / 100}
      key={`${field}${String(value)}`}
      onBlur={(e) => Number(e.target.value) !== Math.round(value * 100) / 100 && change(field, e.target.value)}
    />
  );
  const p = r?.lastingPayback;
  const points = r
    ? [
        { name: '0', p10: 0, p25: 0, p50: 0, p75: 0, p90: 0, one: 0 },
        ...r.netUsdBySeason.map((d, i) => ({ name: String(i + 1), ...d, one: r.onePathUsdBySeason[i] })),
      ]
    : [];
  const by10 = p ? p.shareBySeason.slice(0, 10).reduce((s, x) => s + x, 0) : 0;
  return (
    <>
      {r && p ? (
        option.isRunningChange ? (
          <h1>
            {option.title} costs nothing to begin and saves <b>{dollars(r.savingUsd.p50)}</b> in a middling season.
          </h1>
        ) : (
          <h1>
            {p.p50Season ? (
              <>
                Half the futures have paid it back by season <b>{p.p50Season}</b>,{' '}
              </>
            ) : (
              'Under half the futures ever pay it back; '
            )}
            <b>{ofHundred(by10)} of 100</b> by season 10; <b>{ofHundred(p.neverShare)} of 100</b> never do.
          </h1>
        )
      ) : (
        <h1>{option.title} is not in the newest study.</h1>
      )}
      <p className="lead">
        {option.title},{' '}
        <Link to={`/houses/${option.house.id}?option=${option.key}`}>
          {option.house.farm.name}, {option.house.name}
        </Link>
        .
        {r && (
          <>
            {' '}
            It saves <b>{dollars(r.savingUsd.p50)}</b> in a middling season after running costs ({dollars(r.savingUsd.p10)} to{' '}
            {dollars(r.savingUsd.p90)}), and {Math.round(100 * r.heatSavedShare)} % of the heat. Over the horizon it is worth{' '}
            {dollars(r.npvUsd.p50)} ({dollars(r.npvUsd.p10)} to {dollars(r.npvUsd.p90)}), and loses money in {ofHundred(r.lossShare)} of
            100.
          </>
        )}
      </p>
      <div className="two">
        {r && (
          <section>
            <ChartFrame
              title="Savings added up, against the outlay"
              caption="Net of upkeep, watching, power, renewals. Where a line crosses the green one, the money is back."
              table={{
                heads: ['season', 'one in ten under, $', 'middle, $', 'one in ten over, $'],
                rows: points.map((x) => [x.name, figure(x.p10), figure(x.p50), figure(x.p90)]),
              }}
            >
              <FanChart
                points={points}
                format={(v) => dollars(v)}
                {...(r.outlayUsd > 0 ? { line: { at: r.outlayUsd, name: `outlay ${dollars(r.outlayUsd)}` } } : {})}
              />
            </ChartFrame>
          </section>
        )}
        <section>
          <h2>What it costs, and asks</h2>
          <p className="caption">Green figures can be changed; the study is then marked out of date.</p>
          <table>
            <thead>
              <tr>
                <th scope="col">once ({option.outlayBasis})</th>
                <th scope="col" className="n">
                  $
                </th>
              </tr>
            </thead>
            <tbody>
              {option.outlay.map((l) => (
                <tr key={l.what}>
                  <td>{l.what}</td>
                  <td className="n">{figure(l.usd)}</td>
                </tr>
              ))}
              <tr className="total">
                <td>Outlay</td>
                <td className="n">{option.isRunningChange ? 0 : editable('outlayUsd', option.outlayUsd, 'outlay, dollars')}</td>
              </tr>
            </tbody>
          </table>
          <table>
            <thead>
              <tr>
                <th scope="col">each season</th>
                <th scope="col" className="n">
                  $
                </th>
              </tr>
            </thead>
            <tbody>
              {option.running.map((l) => (
                <tr key={l.what}>
                  <td>
                    {l.what}
                    {l.field === 'watchingHoursPerWeek' ? (
                      <>, {editable(l.field, l.quantity ?? 0, 'watching, hours a week')} h a week</>
                    ) : l.quantity && l.unit !== 'share' ? (
                      `, ${figure(l.quantity)} ${l.unit ?? ''}`
                    ) : l.unit === 'share' ? (
                      `, ${String(Math.round(1000 * (l.quantity ?? 0)) / 10)} %`
                    ) : (
                      ''
                    )}
                  </td>
                  <td className="n">
                    {l.field === 'upkeepUsdPerYear' || l.field === 'consumablesUsdPerYear'
                      ? editable(l.field, l.usd, `${l.what}, dollars a season`)
                      : figure(l.usd)}
                  </td>
                </tr>
              ))}
              <tr className="total">
                <td>Running</td>
                <td className="n">{figure(option.runningUsd)}</td>
              </tr>
            </tbody>
          </table>
          {save.data?.saveOption.faults.map((f) => (
            <p key={f.message} className="fault">
              {f.message} {f.remedy}
            </p>
          ))}
          {save.data?.saveOption.conflict && (
            <p className="fault">Somebody changed these options meanwhile; the page shows theirs now. Type yours again.</p>
          )}
          {r && r.notCounted.length > 0 && (
            <p className="small">
              <b>Not counted:</b> {r.notCounted.join(', ')}. Enter crop sales on the house to count them.
            </p>
          )}
          {option.drawbacks.length > 0 && (
            <p className="small">
              {option.drawbacks.join(' ')}
              {option.skills.length > 0 && ` Skills: ${option.skills.join(', ')}.`}
            </p>
          )}
          {option.cautions.length > 0 && (
            <p className="caution">
              <b>Caution.</b> {option.cautions.join(' ')} Follow local codes and licensed trades; do not borrow against a saving you cannot
              do without.
            </p>
          )}
        </section>
        {r && p && !option.isRunningChange && (
          <section>
            <ChartFrame
              title="When the money is back"
              caption="Of 100 futures, by season from which it stays paid back. Hatched: never within the seasons reckoned."
              table={{
                heads: ['season', 'of 100 futures'],
                rows: [...p.shareBySeason.map((x, i) => [i + 1, (100 * x).toFixed(1)]), ['never', (100 * p.neverShare).toFixed(1)]],
              }}
            >
              <PaybackBars shares={[...p.shareBySeason]} never={p.neverShare} />
            </ChartFrame>
            <p className="small quiet">
              First time covered: season {r.firstPayback.p50Season ?? 'never'} in the middle; discounted and lasting: season{' '}
              {r.discounted.p50Season ?? 'never'}. The shares are known to ±{Math.max(1, Math.round(100 * p.halfWidth))} of 100 by the
              computing alone; the model&apos;s own error is larger.
            </p>
          </section>
        )}
      </div>
    </>
  );
}
