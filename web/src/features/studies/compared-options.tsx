import { Link } from 'react-router';
import type { ComparisonQuery } from '../../lib/graphql/generated/graphql.ts';
import { counted, figure, ofHundred } from '../../lib/units/format.ts';

/** Options listed; a changed price moves thousands. */
const LISTED = 20;

type Options = NonNullable<ComparisonQuery['studyComparison']>['options'];
type Side = Options[number]['left'];

/** Options whose figures moved, the furthest first. */
export function ComparedOptions({ options, same, left, right }: { options: Options; same: number; left: number; right: number }) {
  if (options.length === 0) return <p>{same === 1 ? 'The one option' : `All ${counted(same, 'option')}`} came out the same.</p>;
  const saved = (s: Side) => (s ? figure(s.savingUsd.p50) : 'not in it');
  const back = (s: Side) =>
    s
      ? `${s.lastingPayback.p50Season ? `season ${String(s.lastingPayback.p50Season)}` : 'never'}, never in ${ofHundred(s.lastingPayback.neverShare)}`
      : '';
  return (
    <>
      <p className="caption">
        {counted(options.length, 'option')} moved, {same} did not. Those that moved most in net worth stand first
        {options.length > LISTED && `, ${String(LISTED)} of them`}.
      </p>
      <div className="scroll" role="region" aria-label="options that moved, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <caption className="small quiet">what differs in the results</caption>
          <thead>
            <tr>
              <th scope="col">house, option</th>
              <th scope="col" className="n">
                saves a season
                <br />
                study {left}, $
              </th>
              <th scope="col" className="n">
                <br />
                study {right}, $
              </th>
              <th scope="col">paid back, study {left}</th>
              <th scope="col">paid back, study {right}</th>
            </tr>
          </thead>
          <tbody>
            {options.slice(0, LISTED).map((o) => (
              <tr key={o.optionId}>
                <td>
                  <Link to={`/options/${encodeURIComponent(o.optionId)}`}>
                    <b>{o.house}</b>
                  </Link>
                  <span className="second">{o.title}</span>
                </td>
                <td className="n" data-name={`saves, study ${String(left)}, $`}>
                  {saved(o.left)}
                </td>
                <td className="n" data-name={`study ${String(right)}, $`}>
                  {saved(o.right)}
                </td>
                <td data-name={`back, study ${String(left)}:`}>{back(o.left)}</td>
                <td data-name={`back, study ${String(right)}:`}>{back(o.right)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
