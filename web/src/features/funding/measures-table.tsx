import { LedgerTable } from '../../components/ledger-table.tsx';
import { dollars, figure, heat, heatUnit } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import type { Order } from './funding-query.ts';
import type { MeritName } from './funding-rules.ts';
import { NumberHead } from '../../components/number-head.tsx';

const names: Record<MeritName, string> = {
  NET_SAVING: 'member net saving',
  ENERGY: 'heat saved',
  CO_2: 'CO₂ not emitted',
  BAD_YEARS: 'member saving where it is least',
};

/** The same money ordered by each of the measures: what each buys, and who would change. */
export function MeasuresTable({ order }: { order: Order }) {
  const { units, say } = useUnits();
  return (
    <section>
      <h2>The same money by the other measures</h2>
      <p className="caption">
        Each order by its own measure per grant dollar, under the same rules. Sums are means over all futures, the title tells the saving in
        their middle; where least: over the tenth of them in which the round saves least (cheap fuel, mild winters), read from the sum. CO₂
        by {order.emissionFactors}; electricity counts none.
      </p>
      <LedgerTable name="measures" className="stack">
        <thead>
          <tr>
            <th scope="col">ordered by</th>
            <th scope="col" className="n">
              funded
            </th>
            <NumberHead over="grants" under="$" />
            <NumberHead over="mean saving" under="a season, $" />
            <NumberHead over="where" under="least, $" />
            <th scope="col" className="n">
              heat a season
              <br />
              {heatUnit(units)}
            </th>
            <NumberHead over="CO₂ a season" under="metric tons" />
            <th scope="col">who would change</th>
          </tr>
        </thead>
        <tbody>
          {order.measures.map((m) => {
            const { enter, leave } = m;
            const list = (options: readonly { title: string }[]) =>
              options
                .slice(0, 2)
                .map((o) => say(o.title))
                .join('; ') + (options.length > 2 ? ` and ${String(options.length - 2)} more` : '');
            return (
              <tr key={m.merit}>
                <td>
                  <b>{names[m.merit]}</b>
                  {m.merit === order.merit && <span className="second">this round</span>}
                </td>
                <td className="n" data-name="funded">
                  {m.fundedTotal}
                </td>
                <td className="n" data-name="grants $">
                  {figure(m.grantUsd)}
                </td>
                <td className="n chief">
                  <span className="wide">{figure(m.savingUsd)}</span>
                  <span className="phone">{dollars(m.savingUsd)}</span>
                </td>
                <td className="n" data-name="where least, $">
                  {figure(m.worstTenthUsd)}
                </td>
                <td className="n" data-name={`heat, ${heatUnit(units)}`}>
                  {heat(m.heatSavedKwh, units)}
                </td>
                <td className="n" data-name="CO₂, t">
                  {figure(m.co2SavedKg / 1000, 3)}
                </td>
                <td className="small note">
                  {m.merit === order.merit
                    ? ''
                    : enter.length + leave.length === 0
                      ? 'nobody'
                      : `${enter.length > 0 ? `enter: ${list(enter)}. ` : ''}${leave.length > 0 ? `leave: ${list(leave)}.` : ''}`}
                </td>
              </tr>
            );
          })}
        </tbody>
      </LedgerTable>
    </section>
  );
}
