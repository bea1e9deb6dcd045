import { Chief } from '../../components/chief.tsx';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { figure, fuelName, unitIn, usdPerUnitIn } from '../../lib/units/format.ts';
import { told } from '../../lib/units/told.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import type { Exposure, Way } from './exposure-ways.tsx';
import { NumberHead } from '../../components/number-head.tsx';

/** What each option takes off the dearest seasons and off the mean, against its own cost. */
export function ExposureTail({ e, own }: { e: Exposure; own: Way }) {
  const { units } = useUnits();
  const dearest = Math.max(...e.options.map((o) => o.breakEvenUsdPerUnit ?? 0));
  const decimals = usdPerUnitIn(dearest, own.unit, units) < 1 ? 3 : 2;
  if (e.options.length === 0) return null;
  return (
    <section>
      <h2>What takes the worst off</h2>
      <p className="caption">
        Each option on every house that has it, under the contract as it is; its yearly cost is the outlay as a payment over its life, and
        running. It earns that where {fuelName[own.fuel]} costs more than the last column.
      </p>
      <LedgerTable name="table of what options take off" className="stack">
        <thead>
          <tr>
            <th scope="col">option</th>
            <NumberHead over="off one season" under="in twenty, $" />
            <NumberHead over="off the mean" under="$ a season" />
            <NumberHead over="its own cost" under="$ a year" />
            <th scope="col" className="n">
              earned over
              <br />$ a {unitIn(own.unit, units)}
            </th>
          </tr>
        </thead>
        <tbody>
          {e.options.map((o) => (
            <tr key={o.key}>
              <td>
                {told(o.title, units)}
                <span className="second">
                  {o.houses} {o.houses === 1 ? 'house' : 'houses'}
                </span>
              </td>
              <td className="n chief">
                <Chief usd={o.tailOffUsd} />
              </td>
              <td className="n" data-name="off the mean, $">
                {figure(o.meanOffUsd)}
              </td>
              <td className="n" data-name="its own cost, $ a year">
                {figure(o.yearlyUsd)}
              </td>
              <td className="n" data-name={`earned over, $ a ${unitIn(own.unit, units)}`}>
                {o.breakEvenUsdPerUnit ? usdPerUnitIn(o.breakEvenUsdPerUnit, own.unit, units).toFixed(decimals) : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </LedgerTable>
    </section>
  );
}
