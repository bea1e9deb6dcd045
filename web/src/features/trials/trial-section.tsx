import { LedgerTable } from '../../components/ledger-table.tsx';
import { counted, dollars, fuelName, priceOf, temperature, type UnitSystem } from '../../lib/units/format.ts';
import { NightsAside } from './nights-aside.tsx';
import { SavingMark } from './saving-mark.tsx';
import { percent, range, type Comparison, type Trial } from './trials-query.ts';
import { UseChart } from './use-chart.tsx';
import { inSentence, told } from '../../lib/units/told.ts';

export function TrialSection({ trial, units }: { trial: Trial; units: UnitSystem }) {
  return (
    <section>
      <h2>{trial.name}</h2>
      <p className="caption">
        {[trial.place, `${trial.startsOn} to ${trial.endsOn}`, trial.station && `weather of ${trial.station}`, trial.note]
          .filter(Boolean)
          .join('; ')}
      </p>
      {trial.faults.map((f) => (
        <p key={f.message} className="fault">
          {f.message} {f.remedy}
        </p>
      ))}
      {trial.comparisons.map((c) => (
        <ComparisonPart key={c.house} c={c} control={trial.control ?? 'A'} units={units} />
      ))}
      <NightsAside trial={trial} />
    </section>
  );
}

function ComparisonPart({ c, control, units }: { c: Comparison; control: string; units: UnitSystem }) {
  const degrees = units === 'us' ? 10 / 1.8 : 5;
  const slope = c.perKelvinColder;
  const sure = slope && (slope.low > 0 || slope.high < 0);
  return (
    <div className="two" style={{ marginBottom: 24 }}>
      <div>
        <UseChart comparison={c} control={control} units={units} />
      </div>
      <div>
        <h3>
          {told(c.retrofitTitle, units)}: {percent(c.saving.value)} ({range(c.saving)})
        </h3>
        <p className="small">
          Saved of the heat at equal inside temperature, with the range of nine in ten; {percent(c.asRunSaving)} as the houses were run.{' '}
          {c.modelledSaving !== null && c.modelledSaving !== undefined && c.factor && (
            <>
              The model expects {percent(c.modelledSaving)} for this house on these nights, so the factor is{' '}
              <b>{c.factor.value.toFixed(2)}</b> ({c.factor.low.toFixed(2)} to {c.factor.high.toFixed(2)}). The factor is carried to other
              houses, never the percentage.
            </>
          )}
        </p>
        {c.words.map((w) => (
          <p key={w} className="small quiet">
            {told(w, units)}
          </p>
        ))}
        <LedgerTable
          name={`saving of ${inSentence(told(c.retrofitTitle, units))} by outside temperature, house ${c.house}`}
          caption={
            <>
              By outside temperature.{' '}
              {slope &&
                (sure
                  ? `Each ${units === 'us' ? '10 F' : '5 K'} colder ${slope.value > 0 ? 'adds' : 'takes'} ${Math.abs(100 * slope.value * degrees).toFixed(1)} points.`
                  : 'No trend with the cold that this trial could tell from chance.')}
            </>
          }
        >
          <thead>
            <tr>
              <th scope="col">nights at</th>
              <th scope="col" className="n">
                nights
              </th>
              <th scope="col">saving, 0 to 60 %</th>
              <th scope="col" className="n">
                %
              </th>
            </tr>
          </thead>
          <tbody>
            {c.byCold.map((b) => (
              <tr key={b.fromC}>
                <td>
                  {temperature(b.fromC, units)} to {temperature(b.toC, units)}
                </td>
                <td className="n">{Math.round(b.nights)}</td>
                <td className="mark">
                  <SavingMark {...b.saving} />
                </td>
                <td className="n">{Math.round(100 * b.saving.value)}</td>
              </tr>
            ))}
          </tbody>
        </LedgerTable>
        {c.elsewhere.length > 0 && (
          <p className="small">
            The same house elsewhere, in a middling winter:{' '}
            {c.elsewhere
              .map((e) => `${e.station} ${e.saving ? `${percent(e.saving.value)} (${range(e.saving)})` : percent(e.modelledSaving)}`)
              .join('; ')}
            .
          </p>
        )}
        {c.worth.length > 0 && (
          <p className="small">
            A middling winter there saves, by fuel at the coming winter's middle price, before any cost of running:{' '}
            {c.worth
              .map(
                (w) =>
                  `${dollars(w.usd.value)} on ${fuelName[w.fuel]} at ${priceOf(w.usdPerUnit, w.unit, units)} (${dollars(w.usd.low)} to ${dollars(w.usd.high)})`,
              )
              .join('; ')}
            .
          </p>
        )}
        <p className="small">
          {c.weeksFor.weeksInUse
            ? `For plus or minus ${String(c.weeksFor.halfWidthPoints)} points a trial as rough as this one needs ${counted(c.weeksFor.weeksInUse, 'week')} in use and ${String(c.weeksFor.weeksIdle ?? 0)} idle.`
            : `Readings as rough as these reach plus or minus ${String(c.weeksFor.halfWidthPoints)} points not in four winters.`}
        </p>
      </div>
    </div>
  );
}
