import type { BillsFragment } from '../../lib/graphql/generated/graphql.ts';
import { counted, type Fuel } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { day, sentence } from './bills-words.ts';

const of100 = (factor: number) => `${factor < 1 ? '−' : '+'}${String(Math.abs(Math.round(100 * (factor - 1))))} %`;

const offBy = (pct: number | null | undefined) => (pct == null ? 'an unknown share' : `${Math.abs(pct).toFixed(1)} %`);

/** What the bills say, before any saving: reckoned against billed, the verdict, what to check first, the grade and what would raise it. */
export function BillsVerdict({ bills, fuel }: { bills: BillsFragment; fuel: Fuel }) {
  const { amount } = useUnits();
  const { check: c, multiplier: m, baseKwhPerDay: b, reasons: r, apart: a } = bills;
  const off = m ? Math.abs(m.value - 1) > 0.1 : false;
  return (
    <>
      {c && (
        <p className="lead">
          We reckon <b>{amount(c.reckonedKwh, fuel)}</b> for {day(c.fromOn)} to {day(c.toOn)}; the bills say{' '}
          <b>{amount(c.billedKwh, fuel)}</b>
          {b && bills.baseIsFitted && b.value > 0 ? `, ${amount(b.value, fuel)} a day of it for what else burns there` : ''}
          {c.seasonShare < 0.8 ? ` (${String(Math.round(100 * c.seasonShare))} % of the winter ${c.seasonName})` : ''}.
        </p>
      )}
      <p>
        <b>{sentence(bills.verdict)}</b>{' '}
        {m && bills.believed && off && r && (
          <span className="quiet">
            A bill cannot tell leaks from films: it could be air changes{' '}
            {r.airChangesFactor ? `${String(Math.round(10 * r.airChangesFactor) / 10)} times as described` : 'alone in no case'}, or
            U-values {r.filmFactor ? of100(r.filmFactor) : 'alone in no case'}.
          </span>
        )}
      </p>
      {bills.checks.length > 0 && (
        <>
          <p style={{ margin: 0 }}>Check, in this order:</p>
          <ol style={{ marginTop: 4 }}>
            {bills.checks.map((x) => (
              <li key={x}>{x}</li>
            ))}
          </ol>
        </>
      )}
      <p>
        Data grade <b>{bills.grade}</b>: the futures take a spread of {Math.round(bills.sdPct)} % for{' '}
        {bills.grade === 'C' ? 'want of bills' : 'these houses together'}.
        {bills.grade === 'A' && ' Metered over a full season, and the model meets it.'}
      </p>
      {bills.raise.length > 0 && (
        <>
          <p style={{ margin: 0 }}>What would raise it:</p>
          <ul style={{ marginTop: 4 }}>
            {bills.raise.map((x) => (
              <li key={x}>{x}</li>
            ))}
          </ul>
        </>
      )}
      {(m || a) && (
        <details className="small quiet">
          <summary>How the bills were met by the model</summary>
          {m && (
            <p>
              By the bills these houses lose {m.value.toFixed(2)} times the heat that their description gives
              {m.low != null && m.high != null
                ? ` (nine in ten: ${m.low.toFixed(2)} to ${m.high.toFixed(2)})`
                : ' (too few intervals for a range)'}
              ; besides heating, {b ? amount(b.value, fuel) : 'nothing'} a day is burned
              {bills.baseIsFitted ? ', as read from the bills' : ''}. With that, the model is off by {offBy(bills.nmbePct)} in all and
              scatters by {offBy(bills.cvRmsePct)} from bill to bill; from the description alone by {offBy(bills.describedNmbePct)} and{' '}
              {offBy(bills.describedCvRmsePct)}. Believed are up to 5 and 15 %, the limits of ASHRAE Guideline 14 for months (there: NMBE
              and CV(RMSE)), borrowed for other intervals.
            </p>
          )}
          {a && (
            <p>
              {a.billsTell
                ? 'These bills tell leaks from films: '
                : 'Bills alone cannot tell leaks from films; with what such houses are like they leave '}
              air changes at {a.airFactor.toFixed(2)} times those described (nine in ten: {a.airLow.toFixed(2)} to {a.airHigh.toFixed(2)})
              and what the films let through at {a.filmFactor.toFixed(2)} times ({a.filmLow.toFixed(2)} to {a.filmHigh.toFixed(2)}). Studies
              draw the air changes from that; it moves what sealing, foam and curtains save, not what the houses burn.
            </p>
          )}
        </details>
      )}
      {bills.notes.map((n) => (
        <p key={n} className="small quiet">
          {n}
        </p>
      ))}
      {bills.withoutWeather > 0 && (
        <p className="small quiet">
          {counted(bills.withoutWeather, 'interval lies', 'intervals lie')} outside the station&apos;s record and{' '}
          {bills.withoutWeather === 1 ? 'is' : 'are'} not met by the model.
        </p>
      )}
    </>
  );
}
