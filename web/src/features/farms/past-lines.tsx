import { LedgerTable } from '../../components/ledger-table.tsx';
import { bought, cents, price, type Way } from './past-words.ts';

/** The lines of one way's bill, so that each can be reckoned again by hand; or what stops it. */
export function PastLines({ way, unit }: { way: Way; unit: string }) {
  if (way.totalUsd == null)
    return (
      <p className="fault">
        {way.name}: {way.faults.map((f) => `${f.message} ${f.remedy}`).join(' ')}
      </p>
    );
  return (
    <details>
      <summary>
        {way.name}: how it comes to ${cents(way.totalUsd)}
        {way.stillOwnUnits > 0 && `, with ${bought(way.stillOwnUnits)} ${way.unit} of the block still to be had`}
        {way.creditUsd > 0 && `, with $${cents(way.creditUsd)} standing with the dealer`}
      </summary>
      <LedgerTable name={`lines of ${way.name}`}>
        <thead>
          <tr>
            <th scope="col">month</th>
            <th scope="col">what</th>
            <th scope="col" className="n">
              quantity{way.unit === unit ? '' : `, ${way.unit}`}
            </th>
            <th scope="col" className="n">
              $ for one
            </th>
            <th scope="col" className="n">
              $
            </th>
          </tr>
        </thead>
        <tbody>
          {way.lines.map((l, i) => (
            <tr key={i}>
              <td>{l.month ?? "season's end"}</td>
              <td>{l.what}</td>
              <td className="n">{l.quantity == null ? '' : bought(l.quantity)}</td>
              <td className="n">{l.usdPerUnit == null ? '' : price(l.usdPerUnit)}</td>
              <td className="n">{cents(l.usd)}</td>
            </tr>
          ))}
        </tbody>
      </LedgerTable>
    </details>
  );
}
