import { figure } from '../../lib/units/format.ts';
import type { LoanAnswer } from './lending-queries.ts';
import { NumberHead } from '../../components/number-head.tsx';

/** What the loan asks season by season, beside the option's own running and renewals. */
export function LoanSeasons({ answer }: { answer: LoanAnswer }) {
  const usual = [...answer.seasons.map((s) => s.runningUsd)].sort((a, b) => a - b)[Math.floor(answer.seasons.length / 2)] ?? 0;
  const renewed = answer.seasons.filter((s) => s.runningUsd > usual + 500 && s.runningUsd > 1.5 * usual);
  return (
    <section>
      <h2>What is due</h2>
      <p className="caption">
        Season by season, July to June, US dollars. Running and renewals are taken off the savings before they meet the payment.
      </p>
      <div className="scroll" role="region" aria-label="what is due by season, scrolls sideways" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">season</th>
              <th scope="col" className="n">
                due
              </th>
              <th scope="col" className="n">
                of it interest
              </th>
              <th scope="col" className="n">
                balance
              </th>
              <NumberHead over="running," under="renewals" />
            </tr>
          </thead>
          <tbody>
            {answer.seasons.map((s) => (
              <tr key={s.season}>
                <td>{s.season}</td>
                <td className="n">{figure(s.serviceUsd, 5)}</td>
                <td className="n">{figure(s.interestUsd, 5)}</td>
                <td className="n">{figure(Math.max(0, Math.round(s.balanceUsd)), 6)}</td>
                <td className="n">{figure(s.runningUsd)}</td>
              </tr>
            ))}
            <tr className="total">
              <td>in all</td>
              <td className="n">
                {figure(
                  answer.seasons.reduce((sum, s) => sum + s.serviceUsd, 0),
                  6,
                )}
              </td>
              <td className="n">{figure(answer.interestUsd, 5)}</td>
              <td />
              <td />
            </tr>
          </tbody>
        </table>
      </div>
      {renewed.length > 0 && (
        <p className="caution">
          <b>A part is renewed in {renewed.map((s) => s.season).join(', ')}.</b> Its cost falls in one season and pulls project cover down
          there: a reserve for it would be prudent.
        </p>
      )}
    </section>
  );
}
