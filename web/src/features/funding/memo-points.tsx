import type { ReactNode } from 'react';
import { dollars, ofHundred } from '../../lib/units/format.ts';
import { changeWords, measureNames, overrideWords, switchWords } from './plan-reports.tsx';
import { conditionsOf } from './plan-table.tsx';
import type { Plan, Round } from './round-query.ts';
import { RulesWords } from './rules-words.tsx';

const REFUSED = 3;

function Point({ title, children }: { title: string; children: ReactNode }) {
  return (
    <div className="point">
      <b>{title}.</b> {children}
    </div>
  );
}

/** The points of the memo after its table; what no data stands behind is left out. */
export function MemoPoints({ round, plan }: { round: Round; plan: Plan }) {
  const waiting = plan.rows.filter((r) => !r.funded).slice(0, REFUSED);
  const out = plan.out.filter((o) => !plan.rows.some((r) => r.funded && r.houseId === o.optionId.split('~')[0])).slice(0, REFUSED);
  const conditions = conditionsOf(plan);
  const declared = round.committee.filter((m) => m.interests.length > 0);
  return (
    <div className="points small">
      <div className="point">
        <b>Rules.</b> <RulesWords round={round} />
      </div>
      {plan.groups.length > 0 && (
        <Point title="Asked, eligible, funded">
          {plan.groups
            .map(
              (g) =>
                `${g.name === 'all' ? 'All farms' : `Farms ${g.name}`}: ${dollars(g.askedUsd)} by ${String(g.askedHouses)} houses, ${dollars(g.eligibleUsd)} by ${String(g.eligibleHouses)}, ${dollars(g.fundedUsd)} by ${String(g.fundedHouses)}${g.minimumShare > 0 ? ` (at least ${String(Math.round(100 * g.minimumShare))} %)` : ''}`,
            )
            .join('. ')}
          .
        </Point>
      )}
      {waiting.length + out.length > 0 && (
        <Point title="Next and not funded">
          {[
            ...waiting.map((r) => `${r.farm}, ${r.house} ${r.why}`),
            ...out.map((o) => `${o.farm}, ${o.house}, ${o.title.toLowerCase()}: ${o.why}`),
          ].join('. ')}
          .
        </Point>
      )}
      {plan.measures.length > 0 && (
        <Point title="By the other measures">
          {plan.measures.map((m) => `${measureNames[m.merit]}, ${dollars(m.savingUsd)} a season: ${changeWords(m, 2, true)}`).join('. ')}.
        </Point>
      )}
      <Point title="Acts of the committee">{plan.overrides.length === 0 ? 'None.' : plan.overrides.map(overrideWords).join(' ')}</Point>
      <Point title="Interests declared">
        {declared.length === 0
          ? 'None.'
          : `${declared.map((m) => `${m.name}, ${m.interests.map((i) => `${i.relation}${i.farm ? ` of ${i.farm}` : ''}`).join(', ')}${m.present ? ', left the room for it' : ', absent'}`).join('; ')}.`}{' '}
        {round.committee.some((m) => m.present) &&
          `Votes: ${String(round.committee.filter((m) => m.present && m.vote === 'FOR').length)} for, ${String(round.committee.filter((m) => m.present && m.vote === 'AGAINST').length)} against, ${String(round.committee.filter((m) => m.present && m.vote === 'ABSTAINED').length)} abstained.`}
      </Point>
      {plan.sums && (
        <Point title="At the margin">
          The last $10,000 of the budget bought {dollars(plan.sums.lastBoughtUsd)} a season; the next would add{' '}
          {dollars(plan.sums.nextAddsUsd)}.
        </Point>
      )}
      {plan.switches.length > 0 && <Point title="What would change the order">{plan.switches.map(switchWords).join(' ')}</Point>}
      <Point title="Earlier rounds">
        {plan.earlier.length === 0
          ? 'None on record.'
          : plan.earlier
              .map(
                (e) =>
                  `${e.round}: ${String(e.awards)} awards; ${
                    e.delivered
                      ? `${e.delivered.share !== null && e.delivered.share !== undefined ? `${String(e.delivered.verifiedAwards)} verified at ${ofHundred(e.delivered.share)} % of their promise, ` : 'none verified, '}${ofHundred(e.delivered.low)} to ${ofHundred(e.delivered.high)} % of all promised`
                      : 'no saving was promised'
                  }; ${dollars(e.returnedUsd)} returned.`,
              )
              .join(' ')}
      </Point>
      {conditions.length > 0 && <Point title="On condition">{conditions.map((c, i) => `${String(i + 1)} ${c}`).join('; ')}.</Point>}
      <Point title="Cautions">
        Sealed houses with burners inside need ducted air and a carbon monoxide alarm; foam and covers meet the fire code; curtains and foam
        are opened before snow; licensed trades and local codes; money borrowed against savings can be lost.
      </Point>
    </div>
  );
}
