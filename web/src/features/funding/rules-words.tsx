import { dollars } from '../../lib/units/format.ts';
import { merits } from './funding-rules.ts';
import type { Round } from './round-query.ts';

const percent = (share: number): string => `${String(Math.round(1000 * share) / 10)} %`;

/** The rules of a kept round as sentences, with the days they were set and run to. */
export function RulesWords({ round: { rules: r, ...round } }: { round: Round }) {
  return (
    <>
      <p>
        The budget is {dollars(r.budgetUsd, 6)}; {percent(r.reserveShare)} is held back
        {round.reserveUntilOn ? ` until ${round.reserveUntilOn}` : ''}, so {dollars(r.availableUsd, 6)} can be given.
      </p>
      <p>
        A grant covers {percent(r.costShare)} of the eligible cost, at most {dollars(r.houseCapUsd, 6)} a house and{' '}
        {dollars(r.farmCapUsd, 6)} a farm and its relations, grants of the last {round.lookBackYears} years counted in; none under{' '}
        {dollars(r.minimumGrantUsd, 6)}. All public money together stays under {percent(r.publicShare)} of the whole cost.
      </p>
      <p>
        {r.partialShare < 1
          ? `Where money runs short a smaller grant is offered, down to ${percent(r.partialShare)} of what was asked.`
          : 'Grants are whole or not at all; what is too large is skipped for the next that fits.'}
      </p>
      <p>
        An option must have paid itself back, and stay so, by season {r.paybackSeasons} in at least {Math.round(100 * r.confidence)} of 100
        futures. First comes what {merits[r.merit]} for each grant dollar.
      </p>
      {r.groups.map((g) => (
        <p key={g.name}>
          {g.minimumShare > 0 ? `At least ${percent(g.minimumShare)} goes to farms ${g.name}` : `Farms ${g.name}`}
          {g.costShare ? `${g.minimumShare > 0 ? ', whose' : ': their'} grants cover ${percent(g.costShare)}` : ''}.
          {g.minimumShare > 0 &&
            (r.groupMoneyHeld
              ? ` What they cannot use is kept${round.groupsUntilOn ? ` until ${round.groupsUntilOn}` : ''}.`
              : ' What they cannot use goes to all.')}
        </p>
      ))}
      <p>
        Houses without a fuel record are{' '}
        {r.gradeC === 'ON_BILLS' ? 'funded on condition of bills' : r.gradeC === 'REFUSED' ? 'not eligible' : 'funded like any other'}.
        {r.memberByOn ? ` Members by ${r.memberByOn} alone.` : ''}
        {r.retrofitCodes.length > 0 ? ` It pays for ${r.retrofitCodes.join(', ')} alone.` : ''}
      </p>
      {r.tests.length > 0 && <p>Each applicant shows: {r.tests.join('; ')}.</p>}
      <p className="small quiet">
        Ties: chance of lasting payback, then the smaller grant, then the earlier application, then a lot drawn with seed {r.lotSeed}.
        {round.rulesSetOn ? ` Set on ${round.rulesSetOn}.` : ''}
        {round.waitingUntilOn ? ` Returned money goes down the waiting list until ${round.waitingUntilOn}.` : ''}
      </p>
    </>
  );
}
