import { InlineNumber } from '../../components/forms/inline-number.tsx';
import type { Order } from './funding-query.ts';
import { merits, ruleLimits, ruleNames, type Rule, type Rules } from './funding-rules.ts';
import { KeepRound } from './keep-round.tsx';
import { MoreRules } from './more-rules.tsx';

/** The rules as sentences; green figures can be changed. On a phone they fold to one line. */
export function RulesPanel({ rules, order }: { rules: Rules; order?: Order | undefined }) {
  const field = (name: Rule, unit: string) => (
    <>
      {unit === '$' && '$'}
      <InlineNumber
        label={ruleNames[name]}
        value={rules.value(name)}
        expected={ruleLimits[name]}
        save={(v) => rules.set(name, String(v))}
      />
      {unit !== '$' && ` ${unit}`}
    </>
  );
  return (
    <section>
      <details className="fold" open={window.innerWidth > 640}>
        <summary>
          <h2>Rules of this round</h2>
        </summary>
        <p>
          The budget is {field('budgetUsd', '$')}; {field('reserveShare', '%')} is held for overruns and errors.
        </p>
        <p>
          A grant covers {field('costShare', '%')} of the cost, at most {field('houseCapUsd', '$')} a house and {field('farmCapUsd', '$')} a
          farm and its relations, earlier grants of six years counted in.
        </p>
        <p>
          An option must have paid itself back, and stay so, by season {field('paybackSeasons', '')} in at least{' '}
          {field('confidence', 'of 100')} futures. The grant is not counted.
        </p>
        <label>
          <span>First comes what, per grant dollar,</span>
          <select value={rules.merit} onChange={(e) => rules.set('merit', e.target.value)}>
            {Object.entries(merits).map(([k, v]) => (
              <option key={k} value={k}>
                {v}
              </option>
            ))}
          </select>
        </label>
        <p className="print-only">First comes what {merits[rules.merit]}, per grant dollar.</p>
        <MoreRules rules={rules} order={order} field={field} />
        <p className="small quiet controls">Green figures can be changed; the list sorts anew, and the address keeps the rules.</p>
      </details>
      <KeepRound rules={rules} />
      <p className="small caution">
        <b>Caution.</b> Sealing and covering houses with burners inside needs ducted air and a carbon monoxide alarm; curtains and foam need
        someone who opens them before snow. Licensed trades, local codes. Savings are uncertain: money lent against them can be lost.
      </p>
    </section>
  );
}
