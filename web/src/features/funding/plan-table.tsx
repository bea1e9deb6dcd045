import { Fragment, useState } from 'react';
import { Link } from 'react-router';
import { Chief } from '../../components/chief.tsx';
import { IntervalHead, IntervalMark } from '../../components/charts/interval-mark.tsx';
import { GradeMark } from '../../components/grade-mark.tsx';
import { dollars, figure, ofHundred, unbroken } from '../../lib/units/format.ts';
import type { Plan, PlanRow } from './round-query.ts';
import { NumberHead } from '../../components/number-head.tsx';

const BELOW = 6;

/** The order of a kept round: the line stands where the money ends, what waits stands below it. */
export function PlanTable({ plan, rule, decided }: { plan: Plan; rule: number; decided: boolean }) {
  const [all, showAll] = useState(false);
  const funded = plan.rows.filter((r) => r.funded).length;
  const conditions = conditionsOf(plan);
  const shown = all ? plan.rows : plan.rows.slice(0, funded + BELOW);
  return (
    <section>
      <h2>{decided ? 'Order as it was decided' : 'Order under these rules'}</h2>
      <p className="caption">
        {plan.sums
          ? `Thin line: from one in ten lower to one in ten higher. Thick: the middle half. Dot: middle. Dashed: the confidence rule, season ${String(rule)}.`
          : 'Entered from the co-op’s papers: no study stands behind it, so nothing is told of paybacks.'}
      </p>
      {plan.sums && (
        <div className="phone-only">
          <IntervalHead />
        </div>
      )}
      <div className="scroll" role="region" aria-label="order of the round, scrolls sideways" tabIndex={0}>
        <table className="stack ranked">
          <thead>
            <tr>
              <th scope="col">farm, house, option</th>
              <NumberHead over="grant" under="$" />
              {plan.sums && (
                <th scope="col">
                  <IntervalHead />
                </th>
              )}
              {plan.sums && <th scope="col">data</th>}
              {plan.sums && <NumberHead over="saves a" under="season, $" />}
              <NumberHead over="whole" under="cost, $" />
              <NumberHead over="own" under="part, $" />
              <th scope="col">on condition; why</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((r, i) => (
              <Fragment key={r.optionId}>
                {i === funded && <Line plan={plan} decided={decided} />}
                <Row row={r} plan={plan} rule={rule} conditions={conditions} />
              </Fragment>
            ))}
            {shown.length === funded && <Line plan={plan} decided={decided} />}
          </tbody>
        </table>
      </div>
      {conditions.length > 0 && (
        <p className="small quiet">On condition: {conditions.map((c, i) => `${String(i + 1)} ${c}`).join('; ')}.</p>
      )}
      {plan.rows.length > funded + BELOW && (
        <p className="below">
          <button className="link" aria-expanded={all} onClick={() => showAll(!all)}>
            {all ? 'fewer below the line' : `${String(plan.rows.length - funded - BELOW)} more below the line`}
          </button>
        </p>
      )}
    </section>
  );
}

/** Conditions of what is funded, each once: rows name them by their number. */
export const conditionsOf = (plan: Plan): string[] => [...new Set(plan.rows.flatMap((r) => r.conditions))];

/** Numbers of a row's conditions, as "1, 2". */
export const conditionNumbers = (r: PlanRow, all: readonly string[]): string =>
  r.conditions.map((c) => String(all.indexOf(c) + 1)).join(', ');

const notes = (r: PlanRow, all: readonly string[]): string =>
  [
    ...(r.conditions.length > 0 ? [`on condition ${conditionNumbers(r, all)}`] : []),
    ...(r.grantUsd < r.askedUsd ? [`asked for ${dollars(r.askedUsd)}`] : []),
    ...(r.ballot.recused.length > 0 ? [`left the room: ${r.ballot.recused.join(', ')}`] : []),
    ...(r.funded && !r.pinned ? [] : [r.why]),
  ].join('; ');

function Row({ row: r, plan, rule, conditions }: { row: PlanRow; plan: Plan; rule: number; conditions: readonly string[] }) {
  const p = r.payback;
  return (
    <tr>
      <td>
        <span className="rank">{r.rank}</span>
        <Link to={plan.sums ? `/options/${encodeURIComponent(r.optionId)}` : `/houses/${r.houseId}`}>
          <b>{r.farm}</b>, {r.house}
        </Link>
        <span className="second">{r.title}</span>
      </td>
      <td className="n chief">
        <Chief usd={r.grantUsd} />
      </td>
      {plan.sums && (
        <td className="mark">
          {p && (
            <IntervalMark
              payback={{
                p10Season: p.p10,
                p25Season: p.p25,
                p50Season: p.p50,
                p75Season: p.p75,
                p90Season: p.p90,
                neverShare: p.neverShare,
              }}
              rule={rule}
            />
          )}
        </td>
      )}
      {plan.sums && <td data-name="data">{r.grade && <GradeMark grade={r.grade} />}</td>}
      {plan.sums && (
        <td className="n" data-name="saves $ a season">
          {r.savingUsd ? figure(r.savingUsd.p50) : ''}
          {r.fundedShare !== null && r.fundedShare !== undefined && (
            <span className="second">{unbroken(`${ofHundred(r.fundedShare)} of 100`)}</span>
          )}
        </td>
      )}
      <td className="n" data-name="whole cost $">
        {figure(r.outlayUsd)}
      </td>
      <td className="n" data-name="own part $">
        {figure(r.ownPartUsd)}
      </td>
      <td className="small note">{notes(r, conditions)}</td>
    </tr>
  );
}

function Line({ plan, decided }: { plan: Plan; decided: boolean }) {
  const held = plan.sums?.heldUsd ?? 0;
  return (
    <tr className="line">
      <td>
        {decided ? 'Waiting list below' : 'Budget line'}: of {dollars(plan.availableUsd, 6)}{' '}
        {dollars(plan.availableUsd - plan.grantUsd - held)} is left{held > 0 ? `, ${dollars(held)} is kept for groups` : ''}
      </td>
      <td className="n chief">{figure(plan.grantUsd)}</td>
      {plan.sums && <td />}
      {plan.sums && <td />}
      {plan.sums && (
        <td className="n" data-name="saves $ a season">
          {figure(plan.sums.savingUsd.p50)}
        </td>
      )}
      <td className="n" data-name="whole cost $">
        {figure(plan.outlayUsd)}
      </td>
      <td className="n" data-name="own part $">
        {figure(plan.outlayUsd - plan.grantUsd)}
      </td>
      <td />
    </tr>
  );
}
