import { dollars, heat, heatUnit, ofHundred } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import type { Row } from './funding-query.ts';
import type { Rules } from './funding-rules.ts';

/** Why a row stands where it stands: what it buys a grant dollar, against the next one, and how it passes each rule. */
export function WhyHere({ row, next, rules }: { row: Row; next?: Row | undefined; rules: Rules }) {
  const { units } = useUnits();
  const r = row.result;
  const per = (x: Row): string => {
    switch (rules.merit) {
      case 'ENERGY':
        return `${heat(x.meritPerGrantUsd * 1000, units)} ${heatUnit(units)} of heat a season for each $1,000 of grant`;
      case 'CO_2':
        return `${(x.meritPerGrantUsd * 1000).toFixed(0)} kg of CO₂ a season for each $1,000 of grant`;
      default:
        return `$${x.meritPerGrantUsd.toFixed(2)} a season for each grant dollar`;
    }
  };
  const season = rules.value('paybackSeasons');
  const paid = r.lastingPayback.shareBySeason.slice(0, season).reduce((s, x) => s + x, 0);
  const full = (rules.value('costShare') / 100) * r.outlayUsd;
  return (
    <ul className="small why-here">
      {row.pinned && <li>Pinned by the committee: it stands here by decision, not by its figures.</li>}
      {!row.funded && !row.pinned && <li>It {row.why}.</li>}
      <li>
        It saves {dollars(r.savingUsd.mean)} a season on the mean of all futures (middle {dollars(r.savingUsd.p50)}, one in ten under{' '}
        {dollars(r.savingUsd.p10)}, one in ten over {dollars(r.savingUsd.p90)}) and asks for {dollars(row.grantUsd)}: {per(row)}.
      </li>
      {next && <li>The row below buys {per(next)}.</li>}
      <li>
        Paid back by season {season}, and stays so, in {ofHundred(paid)} of 100 futures; {rules.value('confidence')} are asked. It loses
        money in {ofHundred(r.lossShare)} of 100.
      </li>
      <li>
        {row.grantUsd < Math.floor(full)
          ? `The grant is cut from ${dollars(full)} to the cap.`
          : `The grant is ${String(rules.value('costShare'))} % of ${dollars(r.outlayUsd)}.`}{' '}
        If each future were known before deciding, it would be funded in {ofHundred(row.fundedShare)} of 100.
      </li>
      {row.option.house.dataGrade === 'C' && (
        <li>No fuel record stands behind it: the interval is wide, and two winters of bills would narrow it.</li>
      )}
    </ul>
  );
}
