import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { Crumbs } from '../../components/crumbs.tsx';
import { usePageName } from '../../components/page-name.ts';
import { ask } from '../../lib/graphql/client.ts';
import { dollars, dollarsAndCents, fuelName, heat, heatUnit, ofHundred, perCent } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { OptionCosts } from './option-costs.tsx';
import { OptionFan, OptionPayback } from './option-money.tsx';
import { OptionMoves } from './option-moves.tsx';
import { OptionQuery, type Option, type Result } from './option-query.ts';

export function OptionPage() {
  const { optionId = '' } = useParams();
  const { say } = useUnits();
  const { data, error } = useQuery({ queryKey: ['option', optionId], queryFn: () => ask(OptionQuery, { id: optionId }) });
  usePageName(data?.option && say(data.option.title), data?.option?.house.name, data?.option?.house.farm.name);
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
  return (
    <>
      <Crumbs
        above={[
          ['/farms', 'Farms'],
          [`/farms/${option.house.farm.id}`, option.house.farm.name],
          [`/houses/${option.house.id}?option=${option.key}`, option.house.name],
        ]}
        here={say(option.title)}
      />
      <Heading option={option} />
      {r && (
        <p className="lead">
          <Worth result={r} movesTo={option.movesTo} />
        </p>
      )}
      <p className="acts">
        <Link to={`/houses/${option.house.id}/sheet?option=${option.key}`}>sheet for the grower to print</Link>
      </p>
      <div className="two">
        {r && <OptionFan result={r} />}
        <OptionCosts option={option} />
        {r && !option.isRunningChange && <OptionPayback result={r} />}
      </div>
      {r && <OptionMoves optionId={option.id} hasOutlay={!option.isRunningChange} />}
    </>
  );
}

function Heading({ option }: { option: Option }) {
  const { say } = useUnits();
  const p = option.result?.lastingPayback;
  const what = `${say(option.title)}, on ${option.house.farm.name}, ${option.house.name}`;
  if (!option.result || !p) return <h1>{what}: it is not in the newest study.</h1>;
  if (option.isRunningChange)
    return (
      <h1>
        {what}: it costs nothing to begin and saves <b>{dollars(option.result.savingUsd.p50)}</b> a season
        {option.result.notCounted.length > 0 ? `; not counted: ${option.result.notCounted.join(', ')}` : ''}.
      </h1>
    );
  const by10 = p.shareBySeason.slice(0, 10).reduce((s, x) => s + x, 0);
  return (
    <h1>
      {what}:{' '}
      {p.p50Season ? (
        <>
          half the futures have paid it back by season <b>{p.p50Season}</b>,{' '}
        </>
      ) : (
        'under half the futures ever pay it back; '
      )}
      <b>{ofHundred(by10)} of 100</b> by season 10; <b>{ofHundred(p.neverShare)} of 100</b> never do.
    </h1>
  );
}

/** What a dollar of the outlay brings back, and as a rate a year. */
function Return({ result: { savingsToInvestment: ratio, rateOfReturn: rate } }: { result: Result }) {
  if (!ratio) return null;
  return (
    <>
      {' '}
      Discounted, a dollar of the outlay brings back {dollarsAndCents(ratio.p50)} ({dollarsAndCents(ratio.p10)} to{' '}
      {dollarsAndCents(ratio.p90)})
      {rate &&
        `, a return of ${perCent(rate.p50)}\u00a0% a year (${perCent(rate.p10)} to ${perCent(rate.p90)}\u00a0%), savings put away at the discount rate`}
      .
    </>
  );
}

/** What it saves; a better heater saves fuel and no heat, and that is said. */
function Worth({ result: r, movesTo }: { result: Result; movesTo?: string | null }) {
  const { units, amount } = useUnits();
  const noHeat = Math.abs(r.heatSavedShare) < 0.005 && r.fuelSavedKwh > 0;
  return (
    <>
      It saves <b>{dollars(r.savingUsd.p50)}</b> a season, the mean of all seasons at their own prices, after running and renewals (
      {dollars(r.savingUsd.p10)} to {dollars(r.savingUsd.p90)}),{' '}
      {r.newFuel && r.newFuelKwh != null
        ? `by burning ${amount(r.newFuelKwh, r.newFuel)} of ${fuelName[r.newFuel]} a season on ${movesTo ?? 'the monthly index'} instead`
        : noHeat
          ? `by burning ${heat(r.fuelSavedKwh, units)} ${heatUnit(units)} less fuel for the same heat: it saves fuel, not heat`
          : `and ${String(Math.round(100 * r.heatSavedShare))} % of the heat`}
      . Over the horizon it is worth {dollars(r.npvUsd.p50)} ({dollars(r.npvUsd.p10)} to {dollars(r.npvUsd.p90)}), and loses money in{' '}
      {ofHundred(r.lossShare)} of 100.
      <Return result={r} />
      {r.startSeason > 0 && ` It is built before season ${String(r.startSeason + 1)} of the study; paybacks are counted from there.`}
    </>
  );
}
