import { LedgerTable } from '../../components/ledger-table.tsx';
import { PairBars } from '../../components/charts/bars.tsx';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import type { HeatFragment } from '../../lib/graphql/generated/graphql.ts';
import { counted, length, fuelName, heat, heatUnit, power, temperature, type Fuel, type UnitSystem } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { NumberHead } from '../../components/number-head.tsx';

interface Props {
  standing: HeatFragment;
  other?: HeatFragment | undefined;
  fuel: Fuel;
  units: UnitSystem;
}

const months = ['Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec', 'Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun'];

/** Where the heat goes as a ledger, the heater against the coldest hour, and heat by month. */
export function HouseHeat({ standing, other, fuel, units }: Props) {
  const { amount } = useUnits();
  const lost = (h: HeatFragment) => h.roofKwh + h.sideWallsKwh + h.endWallsKwh + h.perimeterKwh + h.airKwh + h.purgeKwh;
  const lines: [string, (h: HeatFragment) => number, string?][] = [
    ['Roof', (h) => h.roofKwh],
    [`Side walls, arch below ${length(0.9144, units)}`, (h) => h.sideWallsKwh],
    ['End walls', (h) => h.endWallsKwh],
    ['Edge of the floor', (h) => h.perimeterKwh],
    ['Air leaks', (h) => h.airKwh],
    ['Vented against damp', (h) => h.purgeKwh],
  ];
  const less: typeof lines = [
    ['less sun that counts', (h) => h.solarUsedKwh, '−'],
    ['less sun kept for the night', (h) => h.carriedKwh, '−'],
  ];
  const row = ([name, pick, sign = '']: (typeof lines)[number]) => (
    <tr key={name}>
      <td>{name}</td>
      <td className="n">
        {sign}
        {heat(pick(standing), units)}
      </td>
      <td className="n">{other ? sign + heat(pick(other), units) : ''}</td>
      <td className="n quiet">{sign === '' ? Math.round((100 * pick(standing)) / lost(standing)) : ''}</td>
    </tr>
  );
  const value = (kwh: number) => Number(heat(kwh, units).replace(',', '').replace('−', '-'));
  return (
    <section>
      <h2>Heat ledger</h2>
      <p className="caption">One balance for the season; an option is reckoned whole, never added up.</p>
      <LedgerTable name="heat ledger">
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
            <NumberHead over="share" under="%" />
          </tr>
        </thead>
        <tbody>
          {lines.map(row)}
          <tr className="total">
            <td>All losses</td>
            <td className="n">{heat(lost(standing), units)}</td>
            <td className="n">{other ? heat(lost(other), units) : ''}</td>
            <td className="n">100</td>
          </tr>
          {less.map(row)}
          <tr className="total">
            <td>Heater must give</td>
            <td className="n">{heat(standing.demandKwh, units)}</td>
            <td className="n">{other ? heat(other.demandKwh, units) : ''}</td>
            <td />
          </tr>
        </tbody>
      </LedgerTable>
      <p className="small quiet">
        {amount(standing.fuelKwh, fuel)} of {fuelName[fuel]}
        {other && <>; with the option {amount(other.fuelKwh, fuel)}</>}. Coldest hour {power(standing.peakKw, units)}
        {standing.heaterOutputKw ? ` against a heater that gives ${power(standing.heaterOutputKw, units)}` : ''}
        {standing.coldHours > 0 && <b style={{ color: 'var(--warn)' }}>; too small in {counted(standing.coldHours, 'hour')}</b>}; with all
        in place {power((other ?? standing).designKw, units)} at {temperature(standing.designC, units)}.
      </p>
      <ChartFrame
        title="Heat by month"
        caption={`${heatUnit(units)} the heater must give; outline as it stands${other ? ', solid with the option' : ''}.`}
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
          paired={other !== undefined}
          data={months
            .map((name, i) => ({
              name,
              standing: value(standing.demandKwhByMonth[i] ?? 0),
              withOption: other ? value(other.demandKwhByMonth[i] ?? 0) : 0,
            }))
            .filter((m) => m.standing > 0)}
        />
      </ChartFrame>
    </section>
  );
}
