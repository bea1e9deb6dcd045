import { Link } from 'react-router';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { Chief } from '../../components/chief.tsx';
import { IntervalHead, IntervalMark } from '../../components/charts/interval-mark.tsx';
import type { HouseQuery } from '../../lib/graphql/generated/graphql.ts';
import { figure, fuelName, heat, heatUnit, type Fuel, type UnitSystem } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { told } from '../../lib/units/told.ts';
import { NumberHead } from '../../components/number-head.tsx';

type Option = NonNullable<HouseQuery['house']>['options'][number];

interface Props {
  options: readonly Option[];
  active: string;
  choose: (key: string) => void;
  standing: { fuelKwh: number; filmDueYear?: number | null };
  fuel: Fuel;
  units: UnitSystem;
}

/** Options side by side: what each saves, costs and asks of the grower, with its caution where it is chosen. */
export function HouseOptions({ options, active, choose, standing, fuel, units }: Props) {
  const { amount } = useUnits();
  return (
    <section>
      <h2>Options for this house</h2>
      <p className="caption">
        Dollars saved a season: the mean of all seasons at their own prices, after running and renewals, before any grant. Payback is
        reckoned on the whole outlay. <span className="controls">Choose one to see it in the drawing.</span>
      </p>
      <div className="phone-only">
        <IntervalHead />
      </div>
      <LedgerTable name="table of options" className="stack">
        <thead>
          <tr>
            <th scope="col">option</th>
            <NumberHead over="saved" under="$ a season" />
            <th scope="col">
              <IntervalHead />
            </th>
            <th scope="col" className="n">
              heat saved
              <br />
              {heatUnit(units)}
            </th>
            <NumberHead over="one in ten" under="under to over, $" />
            <NumberHead over="outlay" under="$" />
            <NumberHead over="running" under="$ a season" />
            <th scope="col">what it asks of you</th>
          </tr>
        </thead>
        <tbody>
          {options.map((o) => (
            <tr key={o.id} className={o.key === active ? 'chosen' : undefined}>
              <td>
                <label className="choice">
                  <input type="radio" name="option" checked={active === o.key} onChange={() => choose(o.key)} /> {told(o.title, units)}
                </label>
                {o.result && (
                  <Link className="small" to={`/options/${encodeURIComponent(o.id)}`}>
                    its money<span className="hidden">: {told(o.title, units)}</span>
                  </Link>
                )}
              </td>
              <td className="n chief">{o.result ? <Chief usd={o.result.savingUsd.p50} /> : ''}</td>
              <td className="mark">
                {o.result && !o.isRunningChange ? (
                  <IntervalMark payback={o.result.lastingPayback} />
                ) : (
                  <span className="quiet small">{o.isRunningChange ? 'no outlay, so no payback' : ''}</span>
                )}
              </td>
              <td className="n" data-name={`heat saved, ${heatUnit(units)}`}>
                {o.result && <HeatSaved result={o.result} units={units} />}
              </td>
              <td className="n" data-name="saves, $">
                {o.result ? `${figure(o.result.savingUsd.p10, 2)} to ${figure(o.result.savingUsd.p90, 2)}` : ''}
              </td>
              <td className="n" data-name="outlay, $">
                {figure(o.outlayUsd)}
              </td>
              <td className="n" data-name="running, $ a season">
                {figure(o.runningUsd)}
              </td>
              <td className="small quiet note">
                {o.key === 'none'
                  ? `${amount(standing.fuelKwh, fuel)} in a middling season${standing.filmDueYear ? `; film due in ${String(standing.filmDueYear)}` : ''}.`
                  : told(asks(o).join('. ') + '.', units)}
                {o.key === active && o.cautions.length > 0 && (
                  <span className="caution">
                    <br />
                    <b>Caution before you choose it.</b> {told(o.cautions.join(' '), units)} Follow local codes and licensed trades.
                  </span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </LedgerTable>
    </section>
  );
}

/** A better heater saves fuel, not heat: then the column says so. */
function HeatSaved({ result: r, units }: { result: NonNullable<Option['result']>; units: UnitSystem }) {
  const { amount } = useUnits();
  if (r.newFuel && r.newFuelKwh != null) {
    return (
      <>
        {heat(r.heatSavedKwh, units)}
        <span className="second">
          burns {amount(r.newFuelKwh, r.newFuel)} of {fuelName[r.newFuel]}
        </span>
      </>
    );
  }
  if (Math.abs(r.heatSavedShare) < 0.005 && r.fuelSavedKwh > 0) {
    return (
      <>
        0<span className="second">saves fuel: {heat(r.fuelSavedKwh, units)}</span>
      </>
    );
  }
  return heat(r.heatSavedKwh, units);
}

const lostShare = (q: number) => `${String(Math.round(1000 * q) / 10)} %`;

/** Hours, skills, room, light and drawbacks, in the order in which they bite. */
function asks(o: Option): string[] {
  const line = (field: string) => o.running.find((l) => l.field === field)?.quantity ?? 0;
  const found: string[] = [];
  const hours = line('watchingHoursPerWeek');
  if (hours > 0) found.push(`${String(Math.round(hours * 10) / 10)} h a week of watching`);
  if (o.skills.length > 0) found.push(`Skills: ${o.skills.join(', ')}`);
  const space = o.running.find((l) => l.what.startsWith('Crop space'))?.quantity ?? 0;
  const light = o.running.find((l) => l.what.startsWith('Light'))?.quantity ?? 0;
  if (space > 0) found.push(`Takes ${lostShare(space)} of the floor`);
  if (light > 0) found.push(`Takes ${lostShare(light)} of the light`);
  return [...found, ...o.drawbacks.slice(0, 3).map((d) => d.replace(/\.$/, ''))];
}
