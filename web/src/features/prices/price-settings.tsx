import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useTyped } from '../../components/forms/typed.ts';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { LevelMeaning } from '../../lib/graphql/generated/graphql.ts';
import { fuelName, ofHundred, type Fuel } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { PriceModels } from './price-models.tsx';
import { asTold, asTyped, paidBackBy, percent, trialOf, turnedKnobs, unitOf, type Settings, type Typed } from './price-words.ts';
import { SaveSettings, SettingsQuery, TrialQuery } from './prices-queries.ts';

interface SetRow {
  id: string;
  revision: number;
}

/** How one fuel's price is assumed to move: for those who want to change it, with what moves when they do. */
export function PriceSettings({ fuel, set, optionId }: { fuel: Fuel; set: SetRow; optionId: string }) {
  const { data, error } = useQuery({ queryKey: ['price-settings', fuel], queryFn: () => ask(SettingsQuery, { fuel, trial: null }) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading how the price moves.</p>;
  if (!data.priceSettings) return <p>There is no price record for {fuelName[fuel]} that can be used; import one first.</p>;
  return <Form key={`${fuel}-${String(set.revision)}`} fuel={fuel} set={set} optionId={optionId} settings={data.priceSettings} />;
}

function Form({ fuel, set, optionId, settings }: { fuel: Fuel; set: SetRow; optionId: string; settings: Settings }) {
  const queries = useQueryClient();
  const { units, say } = useUnits();
  const {
    typed,
    set: type,
    changed: retyped,
  } = useTyped<Typed>(
    (u) => Object.fromEntries(settings.knobs.map((k) => [k.field, asTyped(k, k.own, u)])),
    (t, from, to) => turnedKnobs(settings.knobs, t, from, to),
  );
  const [meaning, mean] = useState<LevelMeaning>(settings.levelMeaning);
  const trial = trialOf(fuel, meaning, settings.knobs, typed, units);
  const changed = meaning !== settings.levelMeaning || retyped;
  const kept = useUnsaved(changed);
  const key = JSON.stringify(trial);
  const tried = useQuery({
    queryKey: ['price-settings', fuel, key],
    queryFn: () => ask(SettingsQuery, { fuel, trial }),
    enabled: changed && trial !== undefined,
    placeholderData: (d) => d,
  });
  const effect = useQuery({
    queryKey: ['price-trial', optionId, key],
    queryFn: () => ask(TrialQuery, { id: optionId, trial: trial ?? { fuel, levelMeaning: meaning } }),
    enabled: changed && trial !== undefined && optionId !== '',
    placeholderData: (d) => d,
  });
  const save = useMutation({
    mutationFn: () =>
      ask(SaveSettings, {
        input: {
          setId: set.id,
          expectedRevision: set.revision,
          requestId: requestId(),
          settings: trial ?? { fuel, levelMeaning: meaning },
        },
      }),
    onSuccess: (d) => {
      if (!d.savePriceSettings.changeId) return undefined;
      kept();
      return queries.invalidateQueries();
    },
  });
  const faults = [...(changed ? (tried.data?.priceSettings?.faults ?? []) : []), ...(save.data?.savePriceSettings.faults ?? [])];
  const models = (changed && tried.data?.priceSettings?.models) || settings.models;
  const ends = changed ? effect.data?.option?.priceTrial : undefined;
  const free = settings.freeFit;
  const plain = (field: string, value: number) => asTyped({ field, unit: '' }, value, units);
  return (
    <>
      <fieldset>
        <legend>a price level is</legend>
        {(
          [
            ['MIDDLE', 'the middle of the futures: half are dearer'],
            ['EXPECTED', 'the mean of the futures: what they cost on average'],
          ] as const
        ).map(([value, words]) => (
          <label key={value} className="choice">
            <input type="radio" name="meaning" checked={meaning === value} onChange={() => mean(value)} /> {words}
          </label>
        ))}
        <p className="caption">For all fuels. Both are printed below; at fifteen years they lie a third to a half apart.</p>
      </fieldset>
      <div className="scroll" role="region" aria-label="price settings, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <caption className="hidden">settings of the price model</caption>
          <thead>
            <tr>
              <th scope="col">setting</th>
              <th scope="col" className="n">
                own
              </th>
              <th scope="col">unit</th>
              <th scope="col" className="n">
                default
              </th>
              <th scope="col">what moves with it</th>
            </tr>
          </thead>
          <tbody>
            {settings.knobs.map((k) => {
              const text = typed[k.field] ?? '';
              const wrong = asTold(k, text, units) === undefined;
              const mine = faults.filter((f) => f.field === k.field);
              return (
                <tr key={k.field}>
                  <td>{k.title}</td>
                  <td className="n chief">
                    <input
                      className="inline"
                      inputMode="decimal"
                      aria-label={`${k.title}, ${unitOf(k, units)}`}
                      aria-invalid={wrong || mine.length > 0}
                      placeholder="default"
                      value={text}
                      onChange={(e) => type({ ...typed, [k.field]: e.target.value })}
                    />
                    {wrong && <span className="fault second">a number, please</span>}
                  </td>
                  <td style={{ whiteSpace: 'nowrap' }}>{unitOf(k, units)}</td>
                  <td className="n" data-name="default">
                    {k.usual == null ? 'the record' : asTyped(k, Number(k.usual.toPrecision(3)), units)}
                  </td>
                  <td className="small quiet note">
                    {say(k.words)}
                    {mine.map((f) => (
                      <span key={f.message} className="fault second" role="alert">
                        {say(`${f.message} ${f.remedy}`)}
                      </span>
                    ))}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {free && (
        <p className="small quiet">
          Fitted freely to {settings.seriesName} alone: half a spike gone in {free.halfLifeMonths.toFixed(0)} months (
          {free.halfLifeLowMonths.toFixed(0)} to {free.halfLifeHighMonths.toFixed(0)}
          {free.isDetermined ? '' : ', so not determined'}), volatility {percent(free.volatilityPerYear)} a year, {percent(free.longShare)}{' '}
          of it long-term. Such fits held 71 to 85 of 100 outcomes where 90 were meant.{' '}
          <button
            className="link"
            onClick={() =>
              type({
                ...typed,
                shortReversionPerYear: plain('shortReversionPerYear', free.shortReversionPerYear),
                longShare: plain('longShare', free.longShare),
                volatilityPerYear: plain('volatilityPerYear', free.volatilityPerYear),
              })
            }
          >
            try them
          </button>{' '}
          <button className="link" onClick={() => type(Object.fromEntries(settings.knobs.map((k) => [k.field, ''])))}>
            back to the defaults
          </button>
        </p>
      )}
      <PriceModels models={models} unit={settings.unit} lastMonth={settings.lastMonth} />
      <p role="status">
        {!changed
          ? ''
          : ends
            ? `As typed, the option is paid back ${paidBackBy(ends.tried.paybackSeason)} in half the futures, in ${ofHundred(ends.tried.neverShare)} of 100 never; as in use ${paidBackBy(ends.now.paybackSeason)}, in ${ofHundred(ends.now.neverShare)} of 100 never.`
            : effect.isFetching
              ? 'Running the house with what you typed.'
              : ''}
      </p>
      {faults
        .filter((f) => !settings.knobs.some((k) => k.field === f.field))
        .map((f) => (
          <p key={f.message} className="fault" role="alert">
            {f.message} {f.remedy}
          </p>
        ))}
      {save.data?.savePriceSettings.conflict && (
        <p className="fault">Somebody changed the assumptions meanwhile. Reload and type yours again.</p>
      )}
      {save.error && <p className="fault">{save.error.message}</p>}
      <button className="filled" disabled={!changed || trial === undefined || save.isPending} onClick={() => save.mutate()}>
        Save the settings of {fuelName[fuel]}
      </button>
    </>
  );
}
