import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { Chief } from '../../components/chief.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { counted, dollars, figure, ofHundred } from '../../lib/units/format.ts';
import { Awards, type AwardsCoop, type Listed, stepWords } from './awards-query.ts';
import { DeliveredChart } from './delivered-chart.tsx';
import { NumberHead } from '../../components/number-head.tsx';

/** What the grants that were given delivered, and which are late. */
export function AwardsPage() {
  const { data, error } = useQuery({ queryKey: ['awards'], queryFn: () => ask(Awards) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the awards.</p>;
  const { awards, delivered } = data.coop;
  if (awards.length === 0) {
    return (
      <>
        <h1>No award is given yet.</h1>
        <p className="lead">
          Keep a round on <Link to="/funding">Funding</Link>, enter who decides, and close it on the page of the{' '}
          <Link to="/rounds">round</Link>: its awards then stand here until their savings are verified. What was given before can be{' '}
          <Link to="/rounds/enter">entered from its papers</Link>.
        </p>
      </>
    );
  }
  const returned = awards.filter((a) => a.returnedOn);
  const freed = awards.reduce((s, a) => s + a.freedUsd, 0);
  return (
    <>
      <Heading count={awards.length} delivered={delivered} />
      {delivered && delivered.verifiedAwards < delivered.awards && (
        <p className="lead">
          Of all that was promised between <b>{ofHundred(delivered.low)} %</b> and <b>{ofHundred(delivered.high)} %</b>: what is not
          verified yet counted at nothing and at all
          {returned.length > 0 ? `, ${counted(returned.length, 'returned grant')} at nothing in both` : ''}.
        </p>
      )}
      {freed > 0 && (
        <p>
          {dollars(freed)} went back to its rounds:{' '}
          {awards
            .filter((a) => a.freedUsd > 0)
            .map((a) => `${a.farm}, ${a.house} (${a.returnedReason ?? 'cost less'})`)
            .join('; ')}
          .
        </p>
      )}
      <div className="two">
        <DeliveredChart awards={awards} delivered={delivered ?? undefined} />
        <Late awards={awards} />
      </div>
      <Ledger awards={awards} />
    </>
  );
}

function Heading({ count, delivered }: { count: number; delivered: AwardsCoop['delivered'] }) {
  return (
    <h1>
      <b>{counted(count, 'award')}</b>
      {delivered?.share !== null && delivered?.share !== undefined ? (
        <>
          , <b>{delivered.verifiedAwards}</b> verified: {delivered.verifiedAwards === 1 ? 'it' : 'they'} delivered{' '}
          <b>{ofHundred(delivered.share)} %</b> of the fuel saving that was promised for {delivered.verifiedAwards === 1 ? 'it' : 'them'}.
        </>
      ) : (
        ', none verified yet.'
      )}
    </h1>
  );
}

/** Steps that are thirty days late or more, the latest first. */
function Late({ awards }: { awards: readonly Listed[] }) {
  const late = awards.flatMap((a) => (a.overdue ? [{ a, o: a.overdue }] : [])).sort((x, y) => y.o.daysLate - x.o.daysLate);
  return (
    <section>
      <h2>Overdue</h2>
      <p className="caption">
        From 30 days late; from 60, and nothing paid, the money may return to the waiting list (common practice, no source).
      </p>
      {late.length === 0 && <p>Nothing is 30 days late.</p>}
      <ul>
        {late.map(({ a, o }) => (
          <li key={a.id}>
            <Link to={`/awards/${a.id}`}>
              <b>{a.farm}</b>, {a.house}
            </Link>
            : “{stepWords[o.kind]}” was due on {o.dueOn}, <b>{o.daysLate} days</b> late
            {o.mayReturn ? '; its money may return' : ''}.
          </li>
        ))}
      </ul>
    </section>
  );
}

function Ledger({ awards }: { awards: readonly Listed[] }) {
  const sum = (of: (a: Listed) => number) =>
    figure(
      awards.reduce((s, a) => s + of(a), 0),
      5,
    );
  return (
    <section>
      <h2>Awards</h2>
      <p className="caption">Each grant is a cap and a share: where the work costs less, the grant falls to the same share of it.</p>
      <div className="scroll" role="region" aria-label="awards, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <thead>
            <tr>
              <th scope="col">farm, house, what</th>
              <th scope="col">round</th>
              <th scope="col">where it stands</th>
              <NumberHead over="cap" under="$" />
              <NumberHead over="comes to" under="$" />
              <NumberHead over="paid" under="$" />
              <NumberHead over="delivered," under="% of promised" />
            </tr>
          </thead>
          <tbody>
            {awards.map((a) => (
              <tr key={a.id}>
                <td>
                  <Link to={`/awards/${a.id}`}>
                    <b>{a.farm}</b>, {a.house}
                  </Link>
                  <span className="second">{a.title}</span>
                </td>
                <td data-name="round:">
                  <Link to={`/rounds/${a.roundId}`}>{a.round}</Link>
                  {a.isEntered && <span className="second">entered by hand, not decided here</span>}
                </td>
                <td data-name="stands:">
                  {a.state}
                  {a.overdue && <span className="second">{a.overdue.daysLate} days late</span>}
                </td>
                <td className="n" data-name="cap $">
                  {figure(a.grantCapUsd, 5)}
                </td>
                <td className="n chief">
                  <Chief usd={a.payableUsd} />
                </td>
                <td className="n" data-name="paid $">
                  {figure(a.paidUsd, 5)}
                </td>
                <td className="n" data-name="delivered %">
                  {a.verified ? ofHundred(a.verified.share) : a.returnedOn ? '0' : 'not yet'}
                  {a.verified && (
                    <span className="second">
                      {ofHundred(a.verified.low)} to {ofHundred(a.verified.high)}
                    </span>
                  )}
                </td>
              </tr>
            ))}
            <tr className="total">
              <td>all</td>
              <td />
              <td />
              <td className="n" data-name="cap $">
                {sum((a) => a.grantCapUsd)}
              </td>
              <td className="n chief">{sum((a) => a.payableUsd)}</td>
              <td className="n" data-name="paid $">
                {sum((a) => a.paidUsd)}
              </td>
              <td />
            </tr>
          </tbody>
        </table>
      </div>
    </section>
  );
}
