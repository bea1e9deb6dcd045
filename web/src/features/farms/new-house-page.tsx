import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { useNavigate, useSearchParams } from 'react-router';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { Choice, Field } from '../../components/forms/field.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { UnitSystem } from '../../lib/units/format.ts';
import type { Expected } from '../../lib/units/typed-number.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { coverings, fuelOfHeater, fuels, fuelUnits, heaterOfFuel, heaters, shapes, usualUnit } from './house-words.ts';
import { type Answers, inputOf, looksLikeMetres, turnedAnswers, unanswered } from './new-house-answers.ts';
import { NewHousePreview } from './new-house-preview.tsx';
import { Choices, NewHouse } from './new-house-queries.ts';

const year = { whole: true, such: '2024' };
/** Answers that are numbers. */
const figures: Partial<Record<keyof Answers, Expected>> = {
  bays: { whole: true, least: 1, such: '3' },
  width: {},
  length: {},
  wall: {},
  filmYear: year,
  heaterYear: year,
  night: { such: '60' },
  day: { such: '65' },
  used: { least: 0, grouped: true, such: '4120' },
  price: { least: 0, such: '2.35' },
};

/** Hundreds of thousands of Btu an hour have no decimals, kilowatts may. */
const rated = (units: UnitSystem): Expected => (units === 'us' ? { least: 0, grouped: true, such: '300000' } : { least: 0, such: '90' });
/** Faults that stand at their field, not below the form. */
const atField = [
  'name',
  'farmName',
  'widthM',
  'lengthM',
  'sideWallM',
  'filmYear',
  'heatedFrom',
  'heatedTo',
  'heatingPeriods',
  'heaters',
  'heaterYear',
  'fuel',
  'supply',
  'stationId',
  'unit',
  'usedLastWinter',
  'fixedPriceUsdPerUnit',
];

/** Nine questions about one house; an empty answer takes a default, and the page says which. */
export function NewHousePage() {
  const [params] = useSearchParams();
  const { units } = useUnits();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const { data } = useQuery({ queryKey: ['new-house'], queryFn: () => ask(Choices) });
  const { typed: answers, set, changed } = useTyped<Answers>(() => ({ ...unanswered, farmId: params.get('farm') ?? '' }), turnedAnswers);
  const kept = useUnsaved(changed);
  const [request] = useState(requestId);
  const check = useMutation({ mutationFn: () => ask(NewHouse, { input: inputOf(answers, units, request, true) }) });
  const save = useMutation({
    mutationFn: () => ask(NewHouse, { input: inputOf(answers, units, requestId(), false) }),
    onSuccess: async (d) => {
      if (d.newHouse.houseId) {
        kept();
        await queries.invalidateQueries();
        await navigate(`/houses/${d.newHouse.houseId}`);
      }
    },
  });
  const form = useRef<HTMLFormElement>(null);
  const started = answers.name !== '' && answers.width !== '' && answers.length !== '';
  useEffect(() => {
    const timer = setTimeout(() => started && form.current?.checkValidity() && check.mutate(), 400);
    return () => clearTimeout(timer);
    // checked when an answer changes, not when the mutation object does
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [answers, units, started]);
  const faults = (started && (save.data ?? check.data)?.newHouse.faults) || [];
  const preview = check.data?.newHouse.preview;
  const put = (key: keyof Answers) => (value: string) => {
    save.reset();
    set({ ...answers, [key]: value });
  };
  const field = (key: keyof Answers, label: string, name: string = key, type?: string) => (
    <Field
      label={label}
      value={answers[key]}
      change={put(key)}
      name={name}
      faults={faults}
      type={type}
      number={key === 'input' ? rated(units) : figures[key]}
    />
  );
  const feet = units === 'us' ? 'ft' : 'm';
  const degree = units === 'us' ? 'F' : 'C';
  const unit = answers.unit || usualUnit(answers.fuel, units);
  return (
    <>
      <h1>Nine questions give a first answer for one house.</h1>
      <p className="lead">
        An empty answer takes a default; what was taken stands beside the result, and every answer can be changed later.
      </p>
      <form
        ref={form}
        onSubmit={(e) => {
          e.preventDefault();
          save.mutate();
        }}
      >
        <fieldset className="form">
          <legend>1. Where</legend>
          <Choice
            label="farm"
            value={answers.farmId}
            change={put('farmId')}
            options={[['', 'a new farm'], ...(data?.coop.farmChoices ?? []).map((f) => [f.id, f.name] as const)]}
          />
          {!answers.farmId && (
            <>
              {field('farmName', 'name of the new farm')}
              {field('place', 'place')}
              <Choice
                label="weather station"
                value={answers.stationId}
                change={put('stationId')}
                name="stationId"
                faults={faults}
                options={[['', 'not chosen yet'], ...(data?.coop.weatherStations ?? []).map((s) => [s.id, s.markedName] as const)]}
              />
            </>
          )}
          {field('name', 'name of the house')}
        </fieldset>
        <fieldset className="form">
          <legend>2. Shape and size</legend>
          <Choice label="shape" value={answers.shape} change={put('shape')} options={shapes} />
          {answers.shape === 'GUTTER_CONNECTED' && field('bays', 'number of bays')}
          {field('width', `width of a bay, ${feet}`, 'widthM')}
          {field('length', `length, ${feet}`, 'lengthM')}
          {field('wall', `side wall, ${feet}`, 'sideWallM')}
          {looksLikeMetres(answers, units) && (
            <p className="fault">
              {answers.width} by {answers.length} ft is a very small house. If these are metres, switch the units to SI above, which turns
              them, and type them again.
            </p>
          )}
        </fieldset>
        <fieldset className="form">
          <legend>3. Covering</legend>
          <Choice label="roof" value={answers.covering} change={put('covering')} options={[['', 'not known: double film'], ...coverings]} />
          {field('filmYear', 'year it was put on')}
        </fieldset>
        <fieldset className="form">
          <legend>4. Heated from, to; 5. set points</legend>
          {field('from', 'first day heated, such as 15 Feb', 'heatedFrom')}
          {field('to', 'last day heated', 'heatedTo')}
          {field('night', `night set point, ${degree}`, 'heatingPeriods')}
          {field('day', `day set point, ${degree}`)}
        </fieldset>
        <fieldset className="form">
          <legend>6. Heater</legend>
          <Choice
            label="kind"
            value={answers.heater}
            change={(v) => {
              save.reset();
              set({ ...answers, heater: v, fuel: fuelOfHeater(v, answers.fuel), unit: '' });
            }}
            name="heaters"
            faults={faults}
            options={[['', 'not known: the usual one'], ...heaters]}
          />
          {field('heaterYear', 'year it was set')}
          {field('input', `rated input, ${units === 'us' ? 'Btu/h' : 'kW'}`, 'inputKw')}
        </fieldset>
        <fieldset className="form">
          <legend>7. Fuel, 8. last winter, 9. what else burns from it</legend>
          <Choice
            label="fuel"
            value={answers.fuel}
            change={(v) => {
              save.reset();
              set({ ...answers, fuel: v, heater: heaterOfFuel(v, answers.heater), unit: '' });
            }}
            name="fuel"
            faults={faults}
            options={fuels}
          />
          {field('supply', 'tank or meter, if it has a name')}
          <Choice
            label="unit"
            value={unit}
            change={put('unit')}
            name="unit"
            faults={faults}
            options={(fuelUnits[answers.fuel] ?? []).map((u) => [u, u] as const)}
          />
          {field('used', `used last winter, ${unit}`, 'usedLastWinter')}
          {field('price', `price if fixed by contract, $ a ${unit}`, 'fixedPriceUsdPerUnit')}
          {answers.price !== '' && field('until', 'fixed until', 'fixedUntil', 'date')}
          {field('otherUse', 'what else burns from it')}
        </fieldset>
        <FaultList faults={faults.filter((f) => !f.field || !atField.includes(f.field))} />
        {check.error && <p className="fault">{check.error.message}</p>}
        {save.error && <p className="fault">{save.error.message}</p>}
        <button
          className="filled"
          type="submit"
          disabled={!started || save.isPending || faults.length > 0}
          aria-describedby="new-house-lacks"
        >
          Add the house
        </button>{' '}
        <Lacking
          id="new-house-lacks"
          what={[
            answers.name === '' && 'the name of the house',
            answers.width === '' && 'its width',
            answers.length === '' && 'its length',
            faults.length > 0 && 'an answer that can be right where a field says what is wrong',
          ]}
        />
      </form>
      {preview && faults.length === 0 && <NewHousePreview preview={preview} />}
      {started && !preview && faults.length === 0 && check.data && (
        <p className="quiet">Choose a weather station with a record, and the first answer shows here before you save.</p>
      )}
    </>
  );
}
