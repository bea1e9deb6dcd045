import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useParams, useSearchParams } from 'react-router';
import { PairBars } from '../../components/charts/bars.tsx';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { IntervalHead, IntervalMark } from '../../components/charts/interval-mark.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { dollars, figure, fuelAmount, fuelName, heat, heatUnit, ofHundred, power, temperature } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { HouseDrawing } from './house-drawing.tsx';
import { HouseForm } from './house-form.tsx';
import { House } from './house-query.ts';

const months = ['Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec', 'Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun'];

export function HousePage() {
  const { houseId = '' } = useParams();
  const [params, setParams] = useSearchParams();
  const { units } = useUnits();
  const [editing, setEditing] = useState(false);
  const key = params.get('option');
  const { data, error } = useQuery({
    queryKey: ['house', houseId, key],
    queryFn: () => ask(House, { id: houseId, key: key ?? 'none' }),
    placeholderData: (d) => d,
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the house.</p>;
  const house = data.house;
  if (!house)
    return (
      <p>
        There is no such house. <Link to="/farms">All farms</Link>
      </p>
    );
  const { geometry: g, standing, chosen } = house;
  const form = editing ? <HouseForm house={house} close={() => setEditing(false)} /> : null;
  if (!g || !standing) {
    return (
      <>
        <h1>
          {house.farm.name}, {house.name} cannot be reckoned yet.
        </h1>
        {house.faults.map((f) => (
          <p key={f.message} className="fault">
            {f.message} {f.remedy}
          </p>
        ))}
        {form ?? (
          <button className="filled" onClick={() => setEditing(true)}>
            Change the house
          </button>
        )}
      </>
    );
  }
  const ways = [
    ['roof', standing.roofKwh],
    ['side walls', standing.sideWallsKwh],
    ['end walls', standing.endWallsKwh],
    ['edge of the floor', standing.perimeterKwh],
    ['air leaks', standing.airKwh],
  ] as const;
  const all = ways.reduce((s, [, v]) => s + v, 0) + standing.purgeKwh;
  const worst = [...ways].sort((p, q) => q[1] - p[1])[0] ?? ways[0];
  const picked = house.options.find((o) => o.key === key) ?? house.options.find((o) => o.parts.join() === 'foam') ?? house.options[1];
  const other = key && key !== 'none' ? chosen : undefined;
  const active = house.options.find((o) => o.key === key);
  const ledger = (name: string, pick: (h: NonNullable<typeof standing>) => number, sign = '') => (
    <tr key={name}>
      <td>{name}</td>
      <td className="n">
        {sign}
        {heat(pick(standing), units)}
      </td>
      <td className="n">{other ? sign + heat(pick(other), units) : ''}</td>
    </tr>
  );
  const paid = picked?.result?.lastingPayback;
  return (
    <>
      <h1>
        {house.farm.name}, {house.name} loses <b>{Math.round((100 * worst[1]) / all)} %</b> of its heat through the {worst[0]}
        {picked && paid ? (
          <>
            ; {picked.title.toLowerCase()} pays back in {paid.p50Season ? <b>{paid.p50Season} seasons</b> : 'no middling future'}, or{' '}
            <b>never in {ofHundred(paid.neverShare)} of 100</b>.
          </>
        ) : (
          '.'
        )}
      </h1>
      <p className="lead">
        {house.backCheck ? (
          <>
            Last billed winter ({house.backCheck.seasonName}), all behind its tank or meter: we reckon{' '}
            <b>{fuelAmount(house.backCheck.reckonedKwhFuel, house.fuel, units)}</b>; the bills say{' '}
            <b>{fuelAmount(house.backCheck.billedKwhFuel, house.fuel, units)}</b>: {house.backCheck.verdict}.
          </>
        ) : (
          'No fuel record: grade C, so every figure is wide. Two winters of bills would halve that.'
        )}
      </p>
      {form ?? (
        <button className="link" onClick={() => setEditing(true)}>
          change the house
        </button>
      )}
      <div className="two">
        <section>
          <h2>Where the heat of a middling season goes</h2>
          <p className="caption">
            To scale; {heatUnit(units)} of the winter {standing.seasonName} at {house.farm.stationName}. Arrows are as wide as the loss:{' '}
            <b>outline as it stands, solid with the option</b>.
          </p>
          <HouseDrawing
            g={g}
            standing={standing}
            chosen={other ?? undefined}
            withFoam={active?.parts.includes('foam') ?? false}
            withCurtain={active?.parts.includes('curtain') ?? false}
            units={units}
          />
        </section>
        <section>
          <h2>Heat ledger</h2>
          <p className="caption">One balance for the season; an option is reckoned whole, never added up.</p>
          <table>
            <thead>
              <tr>
                <th scope="col">leaves by</th>
                <th scope="col" className="n">
                  as it stands
                  <br />
                  {heatUnit(units)}
                </th>
                <th scope="col" className="n">
                  with the option
                  <br />
                  {heatUnit(units)}
                </th>
              </tr>
            </thead>
            <tbody>
              {ledger('Roof', (h) => h.roofKwh)}
              {ledger('Side walls, arch below 3 ft', (h) => h.sideWallsKwh)}
              {ledger('End walls', (h) => h.endWallsKwh)}
              {ledger('Edge of the floor', (h) => h.perimeterKwh)}
              {ledger('Air leaks', (h) => h.airKwh)}
              {ledger('Vented against damp', (h) => h.purgeKwh)}
              {ledger('less sun that counts', (h) => h.solarUsedKwh, '−')}
              {ledger('less sun kept for the night', (h) => h.carriedKwh, '−')}
              <tr className="total">
                <td>Heater must give</td>
                <td className="n">{heat(standing.demandKwh, units)}</td>
                <td className="n">{other ? heat(other.demandKwh, units) : ''}</td>
              </tr>
            </tbody>
          </table>
          <p className="small quiet">
            {fuelAmount(standing.fuelKwh, house.fuel, units)} of {fuelName[house.fuel]}. Coldest hour {power(standing.peakKw, units)}
            {standing.heaterOutputKw ? ` against a heater that gives ${power(standing.heaterOutputKw, units)}` : ''}
            {standing.coldHours > 0 && <b style={{ color: 'var(--warn)' }}>; too small in {standing.coldHours} hours</b>}; with all in place{' '}
            {power((other ?? standing).designKw, units)} at {temperature(standing.designC, units)}.
          </p>
          <ChartFrame
            title="Heat by month"
            caption={`${heatUnit(units)} the heater must give.`}
            table={{
              heads: ['month', 'as it stands', 'with the option'],
              rows: months.map((m, i) => [
                m,
                heat(standing.demandKwhByMonth[i] ?? 0, units),
                other ? heat(other.demandKwhByMonth[i] ?? 0, units) : '',
              ]),
            }}
          >
            <PairBars
              unit={heatUnit(units)}
              data={months
                .map((name, i) => ({
                  name,
                  standing: Number(heat(standing.demandKwhByMonth[i] ?? 0, units).replace(',', '')),
                  withOption: other ? Number(heat(other.demandKwhByMonth[i] ?? 0, units).replace(',', '')) : 0,
                }))
                .filter((m) => m.standing > 0)}
            />
          </ChartFrame>
        </section>
      </div>
      <section>
        <h2>Options for this house</h2>
        <p className="caption">
          Dollars saved a season, after running costs and before any grant. Payback is reckoned on the whole outlay.
        </p>
        <div className="scroll" role="region" aria-label="table, scrolls sideways" tabIndex={0}>
          <table className="stack">
            <thead>
              <tr>
                <th scope="col">option</th>
                <th scope="col" className="n">
                  heat saved
                  <br />
                  {heatUnit(units)}
                </th>
                <th scope="col" className="n">
                  saved
                  <br />$
                </th>
                <th scope="col" className="n">
                  one in ten
                  <br />
                  under to over, $
                </th>
                <th scope="col" className="n">
                  outlay
                  <br />$
                </th>
                <th scope="col" className="n">
                  running
                  <br />$ a season
                </th>
                <th scope="col">
                  <IntervalHead />
                </th>
                <th scope="col">what it asks of you</th>
              </tr>
            </thead>
            <tbody>
              {house.options.map((o) => (
                <tr key={o.id}>
                  <td>
                    <label style={{ margin: 0 }}>
                      <input
                        type="radio"
                        name="option"
                        style={{ minHeight: 0 }}
                        checked={(key ?? 'none') === o.key}
                        onChange={() => setParams({ option: o.key }, { replace: true })}
                      />{' '}
                      {o.title}
                    </label>
                    {o.result && (
                      <Link className="small" to={`/options/${encodeURIComponent(o.id)}`}>
                        its money
                      </Link>
                    )}
                  </td>
                  <td className="n" data-name="heat saved">
                    {o.result ? heat(o.result.heatSavedKwh, units) : ''}
                  </td>
                  <td className="n" data-name="saved a season, $">
                    {o.result ? figure(o.result.savingUsd.p50) : ''}
                  </td>
                  <td className="n" data-name="one in ten under to over, $">
                    {o.result ? `${figure(o.result.savingUsd.p10, 2)} to ${figure(o.result.savingUsd.p90, 2)}` : ''}
                  </td>
                  <td className="n" data-name="outlay, $">
                    {figure(o.outlayUsd)}
                  </td>
                  <td className="n" data-name="running, $">
                    {figure(o.runningUsd)}
                  </td>
                  <td className="mark">
                    {o.result && !o.isRunningChange ? (
                      <IntervalMark payback={o.result.lastingPayback} />
                    ) : (
                      <span className="quiet small">{o.isRunningChange ? 'no outlay, so no payback' : ''}</span>
                    )}
                  </td>
                  <td className="small quiet">
                    {o.key === 'none'
                      ? `${fuelAmount(standing.fuelKwh, house.fuel, units)} in a middling season; film due in ${String(house.filmDueYear)}`
                      : o.drawbacks.slice(0, 2).join(' ')}
                    {o.key === key && o.cautions.length > 0 && (
                      <span className="caution">
                        <br />
                        <b>Caution before you choose it.</b> {o.cautions.join(' ')} Follow local codes and licensed trades.
                        {o.skills.length > 0 && ` Skills: ${o.skills.join(', ')}.`}
                      </span>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </section>
      <section>
        <h2>What was taken for granted</h2>
        <p className="caption">Correct any of it; each is a field of the form.</p>
        {house.fromDefaults.map((d) => (
          <p key={d.field + d.title} className="small" style={{ margin: 0 }}>
            {d.title}
            {d.value ? `: ${String(Math.round(d.value * 100) / 100)} ${d.unit === '1' ? '' : d.unit}` : ''}{' '}
            <span className="quiet">({d.source})</span>
          </p>
        ))}
        {house.retrofitsInstalled.length > 0 && <p className="small">Already there: {house.retrofitsInstalled.join('; ')}.</p>}
        {picked?.result && (
          <p className="small quiet">
            Middle saving of {picked.title.toLowerCase()}: {dollars(picked.result.savingUsd.p50)}.
          </p>
        )}
      </section>
    </>
  );
}
