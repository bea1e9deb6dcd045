import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useSearchParams } from 'react-router';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { FanChart } from '../../components/charts/fan-chart.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { fuelColour, fuelName, type Fuel } from '../../lib/units/format.ts';

const FuelQuery = graphql(`
  query Fuel($fuel: FuelKind!) {
    priceFan(fuel: $fuel, seasons: 5) {
      unit
      months
      p10
      p25
      p50
      p75
      p90
      words
    }
    coop {
      priceSeries {
        id
        name
        fuel
        unit
        source
        lastMonth
        inUse
        fitWords
        months {
          month
          usdPerUnit
        }
      }
    }
  }
`);

const Use = graphql(`
  mutation UsePrices($id: ID!, $requestId: ID!) {
    usePrices(seriesId: $id, requestId: $requestId) {
      changeId
      conflict
      faults {
        message
        remedy
      }
    }
  }
`);

const fuels: Fuel[] = ['NATURAL_GAS', 'PROPANE', 'FUEL_OIL', 'ELECTRICITY'];

export function FuelPage() {
  const [params, setParams] = useSearchParams();
  const fuel = (params.get('fuel') ?? 'PROPANE') as Fuel;
  const { data, error } = useQuery({ queryKey: ['fuel', fuel], queryFn: () => ask(FuelQuery, { fuel }), placeholderData: (d) => d });
  const queries = useQueryClient();
  const use = useMutation({
    mutationFn: (id: string) => ask(Use, { id, requestId: requestId() }),
    onSuccess: () => queries.invalidateQueries(),
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Drawing the prices to come.</p>;
  const fan = data.priceFan;
  const price = (v: number) => `$${v.toFixed(v < 1 ? 3 : 2)}`;
  const points = fan
    ? fan.months.map((name, i) => ({
        name,
        p10: fan.p10[i] ?? 0,
        p25: fan.p25[i] ?? 0,
        p50: fan.p50[i] ?? 0,
        p75: fan.p75[i] ?? 0,
        p90: fan.p90[i] ?? 0,
      }))
    : [];
  const winter = points[6];
  const own = data.coop.priceSeries.filter((s) => s.fuel === fuel);
  return (
    <>
      {winter && fan ? (
        <h1>
          Delivered {fuelName[fuel]} in the first January: <b>{price(winter.p50)}</b> a {fan.unit} in the middle, over{' '}
          <b>{price(winter.p90)}</b> in one future of ten.
        </h1>
      ) : (
        <h1>There is no price record for {fuelName[fuel]} yet.</h1>
      )}
      <p className="switches" role="group" aria-label="fuel">
        {fuels.map((f) => (
          <button key={f} aria-pressed={f === fuel} onClick={() => setParams({ fuel: f }, { replace: true })}>
            {fuelName[f]}
          </button>
        ))}
      </p>
      {fan && (
        <section>
          <ChartFrame
            title={`Prices of ${fuelName[fuel]} to come`}
            caption={`Dollars a ${fan.unit}, delivered, by month; ${fan.words}. Where a contract is fixed, the houses pay that instead while it runs.`}
            table={{
              heads: ['month', 'one in ten under, $', 'middle, $', 'one in ten over, $'],
              rows: points.map((p) => [p.name, p.p10.toFixed(3), p.p50.toFixed(3), p.p90.toFixed(3)]),
            }}
          >
            <FanChart points={points} colour={fuelColour[fuel]} format={price} />
          </ChartFrame>
        </section>
      )}
      <section>
        <h2>Records</h2>
        <p className="caption">What the futures roll on from. The spread grows from each record&apos;s own last month.</p>
        {own.map((s) => (
          <div key={s.id}>
            <p>
              <b>{s.name}</b>, $ a {s.unit}, to {s.lastMonth}
              {s.inUse ? '; in use' : ''}.{' '}
              <span className="quiet">
                {s.source}. {s.fitWords.join(' ')}
              </span>{' '}
              {!s.inUse && (
                <button className="link" disabled={use.isPending} onClick={() => use.mutate(s.id)}>
                  use this record
                </button>
              )}
            </p>
          </div>
        ))}
      </section>
    </>
  );
}
