import { unitIn, usdPerUnitIn } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { percent, usd, type Settings } from './price-words.ts';
import { NumberHead } from '../../components/number-head.tsx';

/** The price model under each choice: how much it moves, and where a price may stand after one, five and fifteen years. */
export function PriceModels({ models, unit, lastMonth }: { models: Settings['models']; unit: string; lastMonth: string }) {
  const { units } = useUnits();
  const at = (price: number) => usd(usdPerUnitIn(price, unit, units));
  const years = models[0]?.outlook.map((o) => o.years) ?? [];
  return (
    <>
      <h3>What moves</h3>
      <p className="caption">
        Dollars a {unitIn(unit, units)} by the record, years from {lastMonth}; one in ten futures is under the first and one in ten over the
        second figure. The shape of the year and a price case are not in it.
      </p>
      <div className="scroll" role="region" aria-label="table of price models, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <caption className="hidden">price models</caption>
          <thead>
            <tr>
              <th scope="col">model</th>
              <NumberHead over="volatility" under="a year" />
              <NumberHead over="short-term," under="long-term" />
              {years.map((y) => (
                <th key={y} scope="col" className="n">
                  {y === 1 ? 'after 1 year' : `after ${String(y)} years`}
                  <br />
                  middle, mean
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {models.map((m) => (
              <tr key={m.key} className={m.key === 'now' ? 'chosen' : undefined}>
                <td>
                  {m.key === 'tried' ? <b>{m.name}</b> : m.name}
                  <span className="second">
                    {m.halfLifeMonths == null ? 'no return of a spike' : `half a spike gone in ${m.halfLifeMonths.toFixed(0)} months`}
                  </span>
                </td>
                <td className="n chief">{percent(m.volatilityPerYear)}</td>
                <td className="n" data-name="short-term, long-term">
                  {percent(m.shortVolatility)}, {percent(m.longVolatility)}
                </td>
                {m.outlook.map((o) => (
                  <td key={o.years} className="n" data-name={`after ${String(o.years)}`}>
                    {at(o.middle)}, {at(o.mean)}
                    <span className="second">
                      {at(o.p10)} to {at(o.p90)}
                    </span>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
