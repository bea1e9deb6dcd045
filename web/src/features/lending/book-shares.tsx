import { fuelName, figure, type Fuel } from '../../lib/units/format.ts';
import type { Book } from './book-queries.ts';
import { NumberHead } from '../../components/number-head.tsx';

const fuels: Record<string, Fuel> = {
  NaturalGas: 'NATURAL_GAS',
  Propane: 'PROPANE',
  FuelOil: 'FUEL_OIL',
  Electricity: 'ELECTRICITY',
  WoodPellets: 'WOOD_PELLETS',
};

/** Where the book stands together: lent, expected to be lost, and lost in its worst hundredth. */
export function BookShares({ book }: { book: Book }) {
  return (
    <section>
      <h2>Where the book stands together</h2>
      <p className="caption">
        Shares of what is lent, and of the loss in the hundredth of the futures in which the book loses most: a mark that holds more of the
        second than of the first is where the losses come together.
      </p>
      <Shares name="fuel" rows={book.byFuel.map((s) => ({ ...s, name: fuels[s.name] ? fuelName[fuels[s.name]!] : s.name }))} />
      <Shares name="place" rows={book.byPlace} />
      <Shares name="retrofit" rows={book.byRetrofit} />
    </section>
  );
}

function Shares({ name, rows }: { name: string; rows: Book['byFuel'] }) {
  const [lent, tail] = [rows.reduce((s, r) => s + r.amountUsd, 0), rows.reduce((s, r) => s + r.tailUsd, 0)];
  const percent = (part: number, whole: number) => (whole > 0 ? `${String(Math.round((100 * part) / whole))} %` : '–');
  return (
    <table className="stack" style={{ marginBottom: 24 }}>
      <thead>
        <tr>
          <th scope="col">{name}</th>
          <th scope="col" className="n">
            lent, $
          </th>
          <th scope="col" className="n">
            cases
          </th>
          <NumberHead over="of what is" under="lent" />
          <NumberHead over="of the worst" under="hundredth" />
          <NumberHead over="expected" under="loss, $" />
        </tr>
      </thead>
      <tbody>
        {rows.map((r) => (
          <tr key={r.name}>
            <td>{r.name}</td>
            <td className="n chief">{figure(r.amountUsd, 4)}</td>
            <td className="n" data-name="cases">
              {r.cases}
            </td>
            <td className="n" data-name="of what is lent">
              {percent(r.amountUsd, lent)}
            </td>
            <td className="n" data-name="of the worst hundredth">
              {percent(r.tailUsd, tail)}
            </td>
            <td className="n" data-name="expected loss, $">
              {figure(r.expectedUsd, 2)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
