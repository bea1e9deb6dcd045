import { dollars, figure, ofHundred } from '../../lib/units/format.ts';
import { merits } from './funding-rules.ts';
import type { Plan } from './round-query.ts';

type Switch = Plan['switches'][number];

export const switchWords = (s: Switch): string => {
  switch (s.what) {
    case 'CONFIDENCE':
      return `If payback were asked in over ${ofHundred(s.at)} of 100 futures, ${s.name} would leave.`;
    case 'BUDGET':
      return `With a budget of ${dollars(s.at, 4)}, ${s.name} would enter.`;
    case 'DELIVERY':
      return `If ${s.name} delivered under ${ofHundred(s.at)} % of the saving reckoned, the first that waits would stand before it.`;
  }
};

export const measureNames: Record<keyof typeof merits, string> = {
  NET_SAVING: 'member net saving',
  ENERGY: 'heat saved',
  CO_2: 'CO₂ not emitted',
  BAD_YEARS: 'member saving where it is least',
};

/** Who would enter and leave; on paper by farm and house alone. */
export const changeWords = (m: Plan['measures'][number], most = 3, brief = false): string => {
  const list = (names: readonly string[]) =>
    names
      .slice(0, most)
      .map((n) => (brief ? (n.split(': ')[0] ?? n) : n))
      .join('; ') + (names.length > most ? ` and ${String(names.length - most)} more` : '');
  if (m.enter.length + m.leave.length === 0) return 'nobody would change';
  return [m.enter.length > 0 ? `enter: ${list(m.enter)}` : '', m.leave.length > 0 ? `leave: ${list(m.leave)}` : '']
    .filter(Boolean)
    .join('. ');
};

/** Asked, eligible and funded by group; acts of the committee with their cost; what would change the order. */
export function PlanReports({ plan, merit }: { plan: Plan; merit: keyof typeof merits }) {
  return (
    <div className="two">
      <div>
        <GroupTable plan={plan} />
        {plan.overrides.length > 0 && <Overrides plan={plan} />}
      </div>
      <section>
        <h2>What would change the order</h2>
        <p className="caption">First stands {measureNames[merit]} a grant dollar. The same money by the other measures:</p>
        <ul className="small">
          {plan.measures.map((m) => (
            <li key={m.merit}>
              <b>{measureNames[m.merit]}</b>, {dollars(m.savingUsd)} a season in the mean: {changeWords(m)}.
            </li>
          ))}
        </ul>
        <ul className="small">
          {plan.switches.map((s) => (
            <li key={s.what}>{switchWords(s)}</li>
          ))}
          {plan.sums && (
            <li>
              The last $10,000 of the budget bought {dollars(plan.sums.lastBoughtUsd)} a season; the next would add{' '}
              {dollars(plan.sums.nextAddsUsd)}.
            </li>
          )}
        </ul>
      </section>
    </div>
  );
}

export function GroupTable({ plan }: { plan: Plan }) {
  const cost = plan.sums?.groupsCostUsd ?? 0;
  return (
    <section>
      <h2>Asked, eligible, funded</h2>
      <p className="caption">
        The best grant of each house.{' '}
        {plan.groups.some((g) => g.minimumShare > 0) &&
          (Math.abs(cost) < 1
            ? 'The minimum shares are met without: the rule costs nothing.'
            : `The minimum shares cost all members ${dollars(cost)} a season.`)}
      </p>
      <div className="scroll" role="region" aria-label="groups, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <thead>
            <tr>
              {['farms', 'asked, $', 'eligible, $', 'funded, $', 'of all funded'].map((h, i) => (
                <th key={h} scope="col" className={i > 0 ? 'n' : undefined}>
                  {h}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {plan.groups.map((g) => (
              <tr key={g.name} className={g.name === 'all' ? 'total' : undefined}>
                <td>
                  {g.name}
                  {g.minimumShare > 0 && (
                    <span className="second">
                      at least {Math.round(100 * g.minimumShare)} % of {dollars(plan.availableUsd, 6)}
                    </span>
                  )}
                </td>
                <td className="n" data-name="asked $">
                  {figure(g.askedUsd)} <span className="second">{g.askedHouses} houses</span>
                </td>
                <td className="n" data-name="eligible $">
                  {figure(g.eligibleUsd)} <span className="second">{g.eligibleHouses}</span>
                </td>
                <td className="n" data-name="funded $">
                  {figure(g.fundedUsd)} <span className="second">{g.fundedHouses}</span>
                </td>
                <td className="n" data-name="of all funded">
                  {plan.grantUsd > 0 ? `${String(Math.round((100 * g.fundedUsd) / plan.grantUsd))} %` : ''}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Overrides({ plan }: { plan: Plan }) {
  return (
    <section>
      <h2>Acts of the committee</h2>
      <p className="caption">What each costs all members, against the same rules without it.</p>
      <ul>
        {plan.overrides.map((o) => (
          <li key={o.what + o.name}>{overrideWords(o)}</li>
        ))}
      </ul>
    </section>
  );
}

export const overrideWords = (o: Plan['overrides'][number]): string =>
  `${o.name} is ${o.what}: ${o.reason}. ${
    Math.abs(o.losesUsd) < 1
      ? 'It changes no saving.'
      : o.losesUsd > 0
        ? `It loses ${dollars(o.losesUsd)} a season in the mean, in ${ofHundred(o.losesShare)} of 100 futures.`
        : `It gains ${dollars(-o.losesUsd)} a season in the mean; it loses in ${ofHundred(o.losesShare)} of 100 futures.`
  }${o.ballot.for + o.ballot.against > 0 ? ` Votes: ${String(o.ballot.for)} for, ${String(o.ballot.against)} against${o.ballot.recused.length > 0 ? `; left the room: ${o.ballot.recused.join(', ')}` : ''}.` : ''}`;
