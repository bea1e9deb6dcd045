import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useLocation, useSearchParams } from 'react-router';
import { UndoNotice } from '../../components/undo-notice.tsx';
import { ask } from '../../lib/graphql/client.ts';
import type { RoundsQuery } from '../../lib/graphql/generated/graphql.ts';
import { counted, dollars, figure } from '../../lib/units/format.ts';
import { RoundComparison, Rounds } from './round-query.ts';
import { NumberHead } from '../../components/number-head.tsx';

type Kept = RoundsQuery['coop']['fundingRounds'][number];

/** Rounds that are kept, and two of them side by side. */
export function RoundsPage() {
  const { data, error } = useQuery({ queryKey: ['rounds'], queryFn: () => ask(Rounds) });
  const location = useLocation();
  const [notice, setNotice] = useState(location.state as { said: string; changeId: string } | null);
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the rounds.</p>;
  const { fundingRounds: rounds, brokenDecision } = data.coop;
  const decided = rounds.filter((r) => r.state === 'DECIDED');
  const entered = rounds.length - decided.length - rounds.filter((r) => r.state === 'OPEN').length;
  return (
    <>
      <h1>
        {rounds.length === 0 ? 'No round is kept yet.' : <b>{counted(rounds.length, 'round')}</b>}
        {rounds.length > 0 && (
          <>
            , {decided.length} of them decided; the decided ones gave{' '}
            <b>{dollars(decided.reduce((s, r) => s + (r.plan?.grantUsd ?? 0), 0))}</b>
            {entered > 0 && `; ${counted(entered, 'earlier one is', 'earlier ones are')} entered by hand`}.
          </>
        )}
      </h1>
      {notice && <UndoNotice {...notice} close={() => setNotice(null)} />}
      {brokenDecision && (
        <p className="fault">
          Decision {brokenDecision} does not hash to its checksum or does not name the one before it: its text was changed outside this
          program.
        </p>
      )}
      {rounds.length === 0 && (
        <p className="lead">
          Set the rules on <Link to="/funding">Funding</Link> until the order is one to stand by, then keep them there as a round.
        </p>
      )}
      {rounds.length > 0 && <RoundList rounds={rounds} />}
      <p className="acts">
        <Link to="/funding">start another round</Link>
        <Link to="/rounds/enter">enter an earlier round from its papers</Link>
        <Link to="/awards">awards of all rounds</Link>
      </p>
      {rounds.length > 1 && <Compared rounds={rounds} />}
    </>
  );
}

function RoundList({ rounds }: { rounds: readonly Kept[] }) {
  return (
    <section>
      <h2>Rounds</h2>
      <p className="caption">A round that is open follows the newest study; a decided one stands as its decision froze it.</p>
      <div className="scroll" role="region" aria-label="rounds, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <thead>
            <tr>
              <th scope="col">round</th>
              <th scope="col">state</th>
              <NumberHead over="grants" under="$" />
              <NumberHead over="budget" under="$" />
              <th scope="col" className="n">
                funded
              </th>
              <NumberHead over="saves a season, $" under="one in ten lower, higher" />
            </tr>
          </thead>
          <tbody>
            {rounds.map((r) => (
              <tr key={r.id}>
                <td>
                  <Link to={`/rounds/${r.id}`}>
                    <b>{r.name}</b>
                  </Link>
                  <span className="second">
                    {r.plan?.studyNumber
                      ? `study ${String(r.plan.studyNumber)}`
                      : r.state === 'OPEN'
                        ? 'needs a study'
                        : r.state === 'ENTERED'
                          ? 'entered by hand, not decided here'
                          : 'entered from papers'}
                  </span>
                </td>
                <td data-name="state:">
                  {r.state === 'OPEN'
                    ? 'open'
                    : r.state === 'ENTERED'
                      ? `decided on ${r.plan?.decidedOn ?? ''}, elsewhere`
                      : `decided on ${r.plan?.decidedOn ?? ''}, ${counted(r.decisions.length, 'decision')}`}
                </td>
                <td className="n chief">{r.plan ? figure(r.plan.grantUsd, 4) : ''}</td>
                <td className="n" data-name="budget $">
                  {figure(r.rules.budgetUsd, 6)}
                </td>
                <td className="n" data-name="funded">
                  {r.plan ? `${String(r.plan.rows.filter((x) => x.funded).length)} of ${String(r.plan.rows.length)}` : ''}
                </td>
                <td className="n" data-name="saves $ a season">
                  {r.plan?.sums ? figure(r.plan.sums.savingUsd.p50) : 'not reckoned'}
                  {r.plan?.sums && (
                    <span className="second">
                      {figure(r.plan.sums.savingUsd.p10)} to {figure(r.plan.sums.savingUsd.p90)}
                    </span>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Compared({ rounds }: { rounds: readonly Kept[] }) {
  const [params, setParams] = useSearchParams();
  const left = params.get('left') ?? rounds[1]?.id ?? '';
  const right = params.get('right') ?? rounds[0]?.id ?? '';
  const { data, error } = useQuery({ queryKey: ['rounds', left, right], queryFn: () => ask(RoundComparison, { left, right }) });
  const pick = (side: 'left' | 'right', value: string) => (
    <label>
      <span>{side === 'left' ? 'this round' : 'beside this one'}</span>
      <select
        value={value}
        onChange={(e) => {
          const next = new URLSearchParams(params);
          next.set(side, e.target.value);
          setParams(next, { replace: true });
        }}
      >
        {rounds.map((r) => (
          <option key={r.id} value={r.id}>
            {r.name}
          </option>
        ))}
      </select>
    </label>
  );
  const c = data?.roundComparison;
  const told = (side: NonNullable<typeof c>['left']) =>
    side.plan?.sums
      ? `gives ${dollars(side.plan.grantUsd)} and saves members ${dollars(side.plan.sums.savingUsd.p50)} a season (${dollars(side.plan.sums.savingUsd.p10)} to ${dollars(side.plan.sums.savingUsd.p90)})`
      : side.plan
        ? `gave ${dollars(side.plan.grantUsd)}; no study stands behind it`
        : 'needs a study';
  return (
    <section>
      <h2>Two rounds side by side</h2>
      <div className="form">
        {pick('left', left)}
        {pick('right', right)}
      </div>
      {error && <p className="fault">{error.message}</p>}
      {c && (
        <>
          <p className="lead">
            {c.left.name} {told(c.left)}; {c.right.name} {told(c.right)}.
          </p>
          <div className="two even">
            <Pairs
              title="Rules that differ"
              heads={['rule', c.left.name, c.right.name]}
              rows={c.rules.map((r) => [r.title, r.left ?? 'none', r.right ?? 'none'])}
              none="The rules are the same."
            />
            <Pairs
              title="Grants that differ"
              heads={['farm, house, option', `${c.left.name}, $`, `${c.right.name}, $`]}
              rows={c.grants.map((g) => [g.name, g.leftUsd ? figure(g.leftUsd, 4) : 'none', g.rightUsd ? figure(g.rightUsd, 4) : 'none'])}
              none="The same grants."
              note={c.sameGrants > 0 ? `${counted(c.sameGrants, 'grant')} the same in both.` : ''}
            />
          </div>
        </>
      )}
    </section>
  );
}

function Pairs(props: { title: string; heads: [string, string, string]; rows: [string, string, string][]; none: string; note?: string }) {
  return (
    <section>
      <h2>{props.title}</h2>
      {props.rows.length === 0 ? (
        <p>{props.none}</p>
      ) : (
        <div className="scroll" role="region" aria-label={`${props.title}, scrolls sideways`} tabIndex={0}>
          <table className="stack">
            <thead>
              <tr>
                {props.heads.map((h, i) => (
                  <th key={`${h}${String(i)}`} scope="col" className={i > 0 ? 'n' : undefined}>
                    {h}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {props.rows.map(([name, l, r]) => (
                <tr key={name}>
                  <td>{name}</td>
                  <td className="n" data-name={`${props.heads[1]}:`}>
                    {l}
                  </td>
                  <td className="n" data-name={`${props.heads[2]}:`}>
                    {r}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {props.note && <p className="small quiet">{props.note}</p>}
    </section>
  );
}
