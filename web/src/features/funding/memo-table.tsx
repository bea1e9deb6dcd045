import { figure, ofHundred } from '../../lib/units/format.ts';
import { conditionNumbers, conditionsOf } from './plan-table.tsx';
import type { Plan } from './round-query.ts';

const season = (s: number | null | undefined): string => (s === null || s === undefined ? 'never' : String(s));

/** The table of the memo: what is funded, row by row. */
export function MemoTable({ plan }: { plan: Plan }) {
  const sums = plan.sums !== null && plan.sums !== undefined;
  const conditions = conditionsOf(plan);
  const eligible = plan.rows.some((r) => r.funded && Math.round(r.eligibleUsd) !== Math.round(r.outlayUsd));
  const heads = [
    'farm, house, option',
    'whole cost $',
    ...(eligible ? ['eligible $'] : []),
    'grant $',
    'own part $',
    ...(sums ? ['paid back, season: middle; nine in ten', 'never of 100', 'data', 'funded of 100 futures'] : []),
  ];
  return (
    <div className="scroll" role="region" aria-label="what is funded, scrolls sideways" tabIndex={0}>
      <table className="memo-table">
        <thead>
          <tr>
            {heads.map((h, i) => (
              <th key={h} scope="col" className={i > 0 ? 'n' : undefined}>
                {h}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {plan.rows
            .filter((r) => r.funded)
            .map((r) => (
              <tr key={r.optionId}>
                <td>
                  <b>{r.farm}</b>, {r.house}: {r.title}
                  {r.conditions.length > 0 && <sup> {conditionNumbers(r, conditions)}</sup>}
                </td>
                <td className="n">{figure(r.outlayUsd)}</td>
                {eligible && <td className="n">{figure(r.eligibleUsd)}</td>}
                <td className="n">
                  <b>{figure(r.grantUsd, 5)}</b>
                </td>
                <td className="n">{figure(r.ownPartUsd)}</td>
                {sums && (
                  <>
                    <td className="n">
                      {season(r.payback?.p50)}; {season(r.payback?.p90)}
                    </td>
                    <td className="n">{r.payback ? ofHundred(r.payback.neverShare) : ''}</td>
                    <td className="n">{r.grade}</td>
                    <td className="n">{r.fundedShare === null || r.fundedShare === undefined ? '' : ofHundred(r.fundedShare)}</td>
                  </>
                )}
              </tr>
            ))}
        </tbody>
      </table>
    </div>
  );
}
