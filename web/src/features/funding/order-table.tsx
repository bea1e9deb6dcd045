import { Fragment, useState } from 'react';
import { Link } from 'react-router';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { IntervalHead, IntervalMark } from '../../components/charts/interval-mark.tsx';
import { GradeMark } from '../../components/grade-mark.tsx';
import { dollars, figure, ofHundred, unbroken } from '../../lib/units/format.ts';
import { type Asking, Committee, Pinned, ReasonForm } from './committee.tsx';
import type { Order, Row } from './funding-query.ts';
import type { Rules } from './funding-rules.ts';
import { WhyHere } from './why-here.tsx';
import { useUnits } from '../../lib/units/units-context.tsx';
import { NumberHead } from '../../components/number-head.tsx';

const BELOW = 6;
const PAGE = 100;

interface Props {
  order: Order;
  rules: Rules;
  /** Rank after which the rows shown begin. */
  afterRank: number;
  goTo: (afterRank: number) => void;
}

/** The funding order: the budget line stands where the money ends, and its sums on it. */
export function OrderTable({ order, rules, afterRank, goTo }: Props) {
  const [all, showAll] = useState(false);
  const funded = order.fundedTotal;
  const shown = all || afterRank > 0 ? order.rows : order.rows.filter((r) => r.rank <= funded + BELOW);
  const last = order.rows.at(-1)?.rank ?? 0;
  return (
    <section>
      <h2>Funding order</h2>
      <p className="caption">
        {rules.merit === 'NET_SAVING' && 'In order of the mean saved a season for each grant dollar, small under the middle saving. '}
        Thin line: from one in ten lower to one in ten higher. Thick: the middle half. Dot: middle. The dashed line is the confidence rule,
        season {rules.value('paybackSeasons')}.
      </p>
      <div className="phone-only">
        <IntervalHead />
      </div>
      <LedgerTable name="funding order" className="stack ranked">
        <thead>
          <tr>
            <th scope="col">farm, house, option</th>
            <NumberHead over="grant" under="$" />
            <th scope="col">
              <IntervalHead />
            </th>
            <th scope="col">
              data
              <br />
              grade
            </th>
            <NumberHead over="funded, of 100" under="single futures" />
            <NumberHead over="saves a" under="season, $" />
            <NumberHead over="whole" under="cost, $" />
            <NumberHead over="own" under="part, $" />
          </tr>
        </thead>
        <tbody>
          {shown.map((r, i) => (
            <Fragment key={r.option.id}>
              {r.rank === funded + 1 && <BudgetLine order={order} />}
              <OrderRow row={r} next={order.rows[i + 1]} rules={rules} />
            </Fragment>
          ))}
          {funded === order.rowTotal && last === funded && <BudgetLine order={order} />}
        </tbody>
      </LedgerTable>
      {afterRank === 0 && last > funded + BELOW && (
        <p className="below">
          <button className="link" aria-expanded={all} onClick={() => showAll(!all)}>
            {all ? 'fewer below the line' : `${String(last - funded - BELOW)} more below the line`}
          </button>
        </p>
      )}
      {(afterRank > 0 || (last < order.rowTotal && (all || last <= funded + BELOW))) && (
        <p className="below">
          rows {afterRank + 1} to {last} of {order.rowTotal}
          {funded > 0 && (funded < afterRank || funded >= last) ? `; the budget line stands below row ${String(funded)}` : ''}{' '}
          {afterRank > 0 && (
            <button className="link" onClick={() => goTo(Math.max(0, afterRank - PAGE))}>
              the {PAGE} before
            </button>
          )}{' '}
          {last < order.rowTotal && (
            <button className="link" onClick={() => goTo(last)}>
              the next {Math.min(PAGE, order.rowTotal - last)}
            </button>
          )}
        </p>
      )}
      {rules.excluded.length + rules.amounts.length > 0 && (
        <ul className="small">
          {rules.amounts.map((a, no) => (
            <li key={a.houseId + a.optionKey}>
              Amount set: {a.optionKey}, {dollars(a.grantUsd, 6)} ({a.reason}){' '}
              <button className="link" onClick={() => rules.drop('amount', no)}>
                as the rules give it
              </button>
            </li>
          ))}
          {rules.excluded.map((o) => (
            <li key={o.houseId + o.optionKey}>
              Left out: {o.optionKey} ({o.reason}){' '}
              <button className="link" onClick={() => rules.remove('out', o)}>
                take it back in
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function OrderRow({ row: r, next, rules }: { row: Row; next?: Row | undefined; rules: Rules }) {
  const { say } = useUnits();
  const [asking, ask] = useState<Asking>();
  const [open, setOpen] = useState(false);
  const ifBills = r.funded && r.conditions.some((c) => c.startsWith('bills'));
  return (
    <>
      <tr>
        <td>
          <span className="rank">{r.rank}</span>
          <Link to={`/options/${encodeURIComponent(r.option.id)}`}>
            <b>{r.option.house.farm.name}</b>, {r.option.house.name}
          </Link>
          <span className="second">
            {say(r.option.title)}
            {ifBills && '; if bills come'}{' '}
            <button className="link why" aria-expanded={open} onClick={() => setOpen(!open)}>
              {r.rank === 1 ? 'why first?' : r.funded ? 'why here?' : 'why not funded?'}
              <span className="hidden"> {r.option.house.name}</span>
            </button>
            {r.pinned && <Pinned row={r} rules={rules} />}
          </span>
        </td>
        <td className="n chief">
          <span className="wide">
            <b>{figure(r.grantUsd)}</b>
          </span>
          <span className="phone">{dollars(r.grantUsd)}</span>
        </td>
        <td className="mark">
          <IntervalMark payback={r.result.lastingPayback} rule={rules.value('paybackSeasons')} />
        </td>
        <td data-name="data">
          <GradeMark grade={r.option.house.dataGrade} />
        </td>
        <td className="n" data-name="funded in, of 100">
          <ShareBar share={r.fundedShare} />
          {ofHundred(r.fundedShare)}
        </td>
        <td className="n" data-name="saves $ a season">
          {figure(r.result.savingUsd.p50)}
          {rules.merit === 'NET_SAVING' && <span className="second">{unbroken(`${r.meritPerGrantUsd.toFixed(2)} a grant $`)}</span>}
        </td>
        <td className="n" data-name="whole cost $">
          {figure(r.result.outlayUsd)}
        </td>
        <td className="n" data-name="own part $">
          {figure(r.ownPartUsd)}
        </td>
      </tr>
      {open && (
        <tr>
          <td className="note" colSpan={8}>
            <WhyHere row={r} next={next} rules={rules} />
            {!r.pinned && <Committee row={r} ask={ask} />}
          </td>
        </tr>
      )}
      {asking && (
        <tr>
          <td className="note" colSpan={8}>
            <ReasonForm key={asking} row={r} rules={rules} ask={ask} asking={asking} />
          </td>
        </tr>
      )}
    </>
  );
}

/** The sums of what is above stand on the line itself. */
function BudgetLine({ order }: { order: Order }) {
  return (
    <tr className="line">
      <td>
        Budget line: of {dollars(order.availableUsd)} that can be given now, {dollars(order.availableUsd - order.grantUsd)} is left
      </td>
      <td className="n chief">{figure(order.grantUsd)}</td>
      <td />
      <td />
      <td />
      <td className="n" data-name="saves $ a season">
        {figure(order.savingUsd.p50)}
      </td>
      <td className="n" data-name="whole cost $">
        {figure(order.fundedOutlayUsd)}
      </td>
      <td className="n" data-name="own part $">
        {figure(order.fundedOwnPartUsd)}
      </td>
    </tr>
  );
}

function ShareBar({ share }: { share: number }) {
  return (
    <svg width={44} height={10} aria-hidden="true" style={{ marginRight: 8 }}>
      <line x1={0} x2={44} y1={5} y2={5} stroke="var(--rule)" strokeWidth={3} />
      <line x1={0} x2={44 * share} y1={5} y2={5} stroke="var(--ink)" strokeWidth={3} />
    </svg>
  );
}
