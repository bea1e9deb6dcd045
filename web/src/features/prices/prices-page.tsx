import { useQuery } from '@tanstack/react-query';
import { Link, useSearchParams } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import { fuelName, type Fuel } from '../../lib/units/format.ts';
import { inSentence } from '../../lib/units/told.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { CorrelationsPart } from './correlations-part.tsx';
import { OptionChoice } from './option-choice.tsx';
import { PriceCases, useEffects } from './price-cases.tsx';
import { PriceSettings } from './price-settings.tsx';
import { paidBackBy, seasonName } from './price-words.ts';
import { HouseOptions, PricesQuery } from './prices-queries.ts';

const fuels: Fuel[] = ['NATURAL_GAS', 'PROPANE', 'FUEL_OIL', 'ELECTRICITY', 'WOOD_PELLETS'];

/** How prices are assumed to move: named cases laid over the futures, and the settings of the model, each with what it does to one option. */
export function PricesPage() {
  const { say } = useUnits();
  const [params, setParams] = useSearchParams();
  const change = (to: Record<string, string>) => setParams({ ...Object.fromEntries(params), ...to }, { replace: true });
  const told = params.get('from');
  const first = useQuery({
    queryKey: ['prices', told],
    queryFn: () => ask(PricesQuery, { firstSeason: told === null ? null : Number(told) || 0 }),
    placeholderData: (d) => d,
  });
  const coop = first.data?.coop;
  const inUse = coop?.scenarioSet?.priceCase;
  const from = told === null ? (inUse?.firstSeason ?? 0) : Number(told) || 0;
  const chosen = params.get('option') ?? '';
  const houseId = chosen.split('~')[0] || coop?.houses.items[0]?.id || '';
  const house = useQuery({
    queryKey: ['house-options', houseId],
    queryFn: () => ask(HouseOptions, { id: houseId }),
    enabled: houseId !== '',
  });
  const options = house.data?.house?.options.filter((o) => o.key !== 'none') ?? [];
  const option = options.find((o) => o.id === chosen) ?? options[0];
  const effects = useEffects(option?.id ?? '', from);
  const found = effects.data?.option?.priceCaseEffects;
  if (first.error) return <p className="fault">{first.error.message}</p>;
  const set = coop?.scenarioSet;
  if (!coop) return <p className="quiet">Reading the price cases.</p>;
  if (!set) return <p>There are no assumptions yet.</p>;
  const fuel = (params.get('fuel') ?? house.data?.house?.fuel ?? 'PROPANE') as Fuel;
  const named = coop.priceCases.find((c) => c.inUse);
  const end = (kind: string | undefined) => found?.cases.find((c) => c.kind === kind)?.end;
  const collapse = end('COLLAPSE');
  const spike = end('SPIKE_OF_TWO_WINTERS');
  return (
    <>
      {named && inUse ? (
        <h1>
          Studies take a price case: {named.title.toLowerCase()} from <b>{seasonName(set.firstSeason + inUse.firstSeason)}</b>
          {found && end(named.kind) && (
            <>
              ; {inSentence(say(option?.title ?? ''))} is then paid back <b>{paidBackBy(end(named.kind)?.paybackSeason)}</b> in half the
              futures, without it {paidBackBy(found.base.paybackSeason)}
            </>
          )}
          .
        </h1>
      ) : found && collapse && spike ? (
        <h1>
          {say(option?.title ?? '')} is paid back <b>{paidBackBy(found.base.paybackSeason)}</b> in half the futures; should prices collapse,{' '}
          <b>{paidBackBy(collapse.paybackSeason)}</b>; after a spike of two winters, <b>{paidBackBy(spike.paybackSeason)}</b>.
        </h1>
      ) : (
        <h1>
          <b>{coop.priceCases.length}</b> price cases can be laid over the futures; none is.
        </h1>
      )}
      <p className="lead">
        {option && house.data?.house && (
          <>
            <Link to={`/options/${option.id}`}>{say(option.title)}</Link>, {house.data.house.farm.name}, {house.data.house.name}.{' '}
          </>
        )}
        The records behind the prices stand on the <Link to="/fuel">Fuel page</Link>.
      </p>
      <OptionChoice houseId={houseId} options={options} optionId={option?.id ?? ''} choose={(id) => change({ option: id })} />
      <PriceCases
        coop={coop}
        firstSeason={from}
        effects={found}
        waiting={effects.isFetching && !found}
        begin={(season) => change({ from: String(season) })}
      />
      <section>
        <h2>Settings of the price model</h2>
        <p className="caption">
          For those who know better than the defaults. What is typed is tried at once and kept only when saved; an empty field takes the
          default.
        </p>
        <p className="switches" role="group" aria-label="fuel">
          {fuels.map((f) => (
            <button key={f} aria-pressed={f === fuel} onClick={() => change({ fuel: f })}>
              {fuelName[f]}
            </button>
          ))}
        </p>
        <PriceSettings fuel={fuel} set={set} optionId={option?.id ?? ''} />
      </section>
      <CorrelationsPart />
    </>
  );
}
