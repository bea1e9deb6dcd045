import { LedgerTable } from '../../components/ledger-table.tsx';
import type { WintersQuery } from '../../lib/graphql/generated/graphql.ts';
import { temperature, type UnitSystem } from '../../lib/units/format.ts';

type Normals = NonNullable<WintersQuery['coop']['weatherStations'][number]['normals']>;

interface Props {
  normals: Normals;
  words: readonly string[];
  units: UnitSystem;
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** How the winters made from normals lie about their middle: how many, and the mildest and hardest in per cent. */
export function madeWords(made: Normals['made']): string {
  const days = made.map((m) => m.degreeDaysK).sort((a, b) => a - b);
  const middle = days[Math.floor(days.length / 2)] ?? 0;
  if (days.length < 2 || !(middle > 0)) return 'One middling winter is made of them.';
  const against = (k: number) => `${String(Math.round(Math.abs(100 * (k / middle - 1))))} % ${k < middle ? 'under' : 'over'}`;
  return `${String(days.length)} winters are made of them; the mildest lies ${against(days[0] ?? 0)} the middle one, the hardest ${against(days[days.length - 1] ?? 0)}.`;
}

/** A station that is known by its monthly normals only: what that means, its months, and the winters made of them. */
export function NormalsPart({ normals: n, words, units }: Props) {
  const perDay = units === 'us' ? 1.8 : 1;
  const unit = units === 'us' ? 'F' : 'K';
  return (
    <>
      <div className="caution">
        <b>Monthly normals only.</b> {words.join(' ')}
      </div>
      <p>
        {madeWords(n.made)} The normals alone lead to {Math.round(n.degreeDaysK * perDay).toLocaleString('en-US')} degree days ({unit}) a
        year below {temperature(15.56, units)}; a usual day spans {(n.dailySpanK * perDay).toFixed(1)} {unit}
        {n.spanTold ? '' : ', taken for granted'}.
      </p>
      <LedgerTable name="monthly normals">
        <thead>
          <tr>
            <th scope="col">month</th>
            <th scope="col" className="n">
              mean
            </th>
          </tr>
        </thead>
        <tbody>
          {n.monthlyMeanC.map((c, m) => (
            <tr key={MONTHS[m]}>
              <td>{MONTHS[m]}</td>
              <td className="n">{temperature(c, units)}</td>
            </tr>
          ))}
        </tbody>
      </LedgerTable>
    </>
  );
}
