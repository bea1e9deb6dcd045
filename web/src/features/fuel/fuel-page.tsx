import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useSearchParams } from 'react-router';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { fuelName, unitIn, unitPrice, usdPerUnitIn, type Fuel } from '../../lib/units/format.ts';
import { Findings } from '../../components/findings.tsx';
import { ExposurePart } from './exposure-part.tsx';
import { FarmFuels, FuelQuery, UsePrices } from './fuel-queries.ts';
import { PastRatios } from './past-ratios.tsx';
import { PriceHistory } from './price-history.tsx';
import { useUnits } from '../../lib/units/units-context.tsx';

const fuels: Fuel[] = ['NATURAL_GAS', 'PROPANE', 'FUEL_OIL', 'ELECTRICITY', 'WOOD_PELLETS'];

/** Fuel: prices to come, what one farm's heat can cost on every fuel and contract, and the records behind it. */
export function FuelPage() {
  const { units } = useUnits();
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
  const unit = unitIn(fan?.unit ?? '', units);
  const price = (usd: number) => (usd === 0 ? '$0' : unitPrice(usdPerUnitIn(usd, fan?.unit ?? '', units)));
  const named = data.coop.scenarioSet?.priceCase;
  const farms = data.coop.farmChoices;
  const farm = params.get('farm') ?? farms[0]?.id ?? '';
  const own = data.coop.priceSeries.filter((s) => s.fuel === fuel);
  const prices = fan ? (
    <>
      Delivered {fuelName[fuel]} in the first January: <b>{price(fan.p50[6] ?? 0)}</b> a {unit} in the middle, over{' '}
      <b>{price(fan.p90[6] ?? 0)}</b> in one future of ten.
    </>
  ) : (
    <>There is no price record for {fuelName[fuel]} yet.</>
  );
  return (
    <>
      {farms.length > 0 ? (
        <ExposurePart
          farmId={farm}
          prices={prices}
          choose={<FarmChoice farms={farms} farm={farm} choose={(id) => setParams({ farm: id }, { replace: true })} />}
        />
      ) : (
        <h1>{prices}</h1>
      )}
      {named && (
        <p className="caution">
          <b>A price case is laid over these futures:</b> {named.title.toLowerCase()}, from {named.seasonName}.{' '}
          <Link to={`/fuel/prices?fuel=${fuel}`}>Compare or take it off</Link>.
        </p>
      )}
      <section>
        <p className="switches" role="group" aria-label="fuel">
          {fuels.map((f) => (
            <button key={f} aria-pressed={f === fuel} onClick={() => change({ fuel: f })}>
              {fuelName[f]}
            </button>
          ))}
        </p>
        <PriceHistory data={data} fuel={fuel} format={price} units={units} />
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
              <b>{s.name}</b>, $ a {unitIn(s.unit, units)}, to {s.lastMonth}
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

function FarmChoice({
  farms,
  farm,
  choose,
}: {
  farms: readonly { id: string; name: string }[];
  farm: string;
  choose: (id: string) => void;
}) {
  return (
    <div className="form">
      <label>
        <span>farm</span>
        <select value={farm} onChange={(e) => choose(e.target.value)}>
          {farms.map((f) => (
            <option key={f.id} value={f.id}>
              {f.name}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}
