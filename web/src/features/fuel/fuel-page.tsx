import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useSearchParams } from 'react-router';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { fuelName, type Fuel } from '../../lib/units/format.ts';
import { Findings } from '../../components/findings.tsx';
import { ExposurePart } from './exposure-part.tsx';
import { FarmFuels, FuelQuery, UsePrices } from './fuel-queries.ts';
import { PastRatios } from './past-ratios.tsx';
import { PriceHistory } from './price-history.tsx';

const fuels: Fuel[] = ['NATURAL_GAS', 'PROPANE', 'FUEL_OIL', 'ELECTRICITY', 'WOOD_PELLETS'];
const price = (v: number) => (v === 0 ? '$0' : `$${v.toFixed(v < 1 ? 3 : 2)}`);

/** Fuel: prices to come, what one farm's heat can cost on every fuel and contract, and the records behind it. */
export function FuelPage() {
  const [params, setParams] = useSearchParams();
  const farmAsked = params.get('farm');
  const { data: known } = useQuery({ queryKey: ['farm-fuels'], queryFn: () => ask(FarmFuels) });
  const burns = known?.coop.farmChoices.find((f) => !farmAsked || f.id === farmAsked)?.fuel;
  const fuel = (params.get('fuel') ?? burns ?? 'PROPANE') as Fuel;
  const { data, error } = useQuery({ queryKey: ['fuel', fuel], queryFn: () => ask(FuelQuery, { fuel }), placeholderData: (d) => d });
  const queries = useQueryClient();
  const use = useMutation({
    mutationFn: (id: string) => ask(UsePrices, { id, requestId: requestId() }),
    onSuccess: () => queries.invalidateQueries(),
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Drawing the prices to come.</p>;
  const change = (to: Record<string, string>) => setParams({ ...Object.fromEntries(params), ...to }, { replace: true });
  const fan = data.priceFan;
  const named = data.coop.scenarioSet?.priceCase;
  const farms = data.coop.farmChoices;
  const farm = params.get('farm') ?? farms[0]?.id ?? '';
  const own = data.coop.priceSeries.filter((s) => s.fuel === fuel);
  return (
    <>
      {fan ? (
        <h1>
          Delivered {fuelName[fuel]} in the first January: <b>{price(fan.p50[6] ?? 0)}</b> a {fan.unit} in the middle, over{' '}
          <b>{price(fan.p90[6] ?? 0)}</b> in one future of ten.
        </h1>
      ) : (
        <h1>There is no price record for {fuelName[fuel]} yet.</h1>
      )}
      {named && (
        <p className="caution">
          <b>A price case is laid over these futures:</b> {named.title.toLowerCase()}, from {named.seasonName}.{' '}
          <Link to={`/fuel/prices?fuel=${fuel}`}>Compare or take it off</Link>.
        </p>
      )}
      {farms.length > 0 && (
        <section>
          <div className="form">
            <label>
              <span>farm</span>
              <select value={farm} onChange={(e) => setParams({ farm: e.target.value }, { replace: true })}>
                {farms.map((f) => (
                  <option key={f.id} value={f.id}>
                    {f.name}
                  </option>
                ))}
              </select>
            </label>
          </div>
          <ExposurePart farmId={farm} />
        </section>
      )}
      <section>
        <p className="switches" role="group" aria-label="fuel">
          {fuels.map((f) => (
            <button key={f} aria-pressed={f === fuel} onClick={() => change({ fuel: f })}>
              {fuelName[f]}
            </button>
          ))}
        </p>
        <PriceHistory data={data} fuel={fuel} format={price} />
      </section>
      <PastRatios />
      <section>
        <h2>Records</h2>
        <p className="caption">
          What the futures roll on from. The spread grows from each record&apos;s own last month.{' '}
          <Link to={`/fuel/prices?fuel=${fuel}`}>Price cases and the settings of the model</Link>.
        </p>
        {own.length === 0 && (
          <p>
            There is no record of {fuelName[fuel]}: {fan?.words}. <Link to="/import">Bring in a record</Link> to roll on from your own.
          </p>
        )}
        {own.map((s) => (
          <div key={s.id}>
            <p>
              <b>{s.name}</b>, $ a {s.unit}, to {s.lastMonth}
              {s.inUse ? '; in use' : ''}. <span className="quiet">{s.source}.</span>{' '}
              {!s.inUse && (
                <button className="link" disabled={use.isPending} onClick={() => use.mutate(s.id)}>
                  use this record
                </button>
              )}
            </p>
            <Findings findings={s.findings} open={s.inUse} />
          </div>
        ))}
      </section>
    </>
  );
}
