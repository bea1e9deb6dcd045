import type { FieldFault } from '../../components/forms/fault-list.tsx';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { Choice, Field } from '../../components/forms/field.tsx';
import { useUnits } from '../../lib/units/units-context.tsx';
import { surfaceParts, type TypedParts } from './house-parts.ts';
import { coverings, fuelOfHeater, fuels, heaterOfFuel, heaters, retrofits, shapes } from './house-words.ts';

interface Props {
  typed: TypedParts;
  change: (typed: TypedParts) => void;
  faults: FieldFault[];
  supplies: { id: string; name: string }[];
}

const conditions = [
  ['', 'sound'],
  ['worn', 'worn'],
  ['torn', 'torn'],
] as const;

function replaced<T>(list: readonly T[], at: number, part: Partial<T>): T[] {
  return list.map((x, i) => (i === at ? { ...x, ...part } : x));
}

/** Shape, coverings, heating periods, heaters, supplies, what is installed, and what light and space are worth. */
export function HousePartsForm({ typed, change, faults, supplies }: Props) {
  const { units } = useUnits();
  const degree = units === 'us' ? 'F' : 'C';
  const of = (field: string) => faults.filter((f) => f.field === field);
  const put = (part: Partial<TypedParts>) => change({ ...typed, ...part });
  const plain = (key: 'bays' | 'crop' | 'light' | 'space' | 'shading', label: string, name: string) => (
    <Field
      label={label}
      value={typed[key]}
      change={(v) => put({ [key]: v })}
      name={name}
      faults={faults}
      number={key === 'bays' ? { whole: true, such: '3' } : true}
    />
  );
  return (
    <>
      <fieldset className="form">
        <legend>Shape and coverings</legend>
        <Choice label="shape" value={typed.shape} change={(v) => put({ shape: v })} options={shapes} />
        {typed.shape === 'GUTTER_CONNECTED' && plain('bays', 'number of bays', 'bays')}
        {typed.surfaces.map((s, i) => {
          const name = surfaceParts[i]?.[1] ?? '';
          return (
            <div key={s.part}>
              <Choice
                label={name}
                value={s.code}
                change={(v) => put({ surfaces: replaced(typed.surfaces, i, { code: v }) })}
                options={[['', i === 0 ? 'not known: double film' : 'as the roof'], ...coverings]}
              />
              {s.code && (
                <>
                  <Field
                    label={`${name}: year it was put on`}
                    value={s.year}
                    change={(v) => put({ surfaces: replaced(typed.surfaces, i, { year: v }) })}
                    number={{ whole: true, such: '2024' }}
                    name=""
                    faults={[]}
                  />
                  <Choice
                    label={`${name}: state`}
                    value={s.condition}
                    change={(v) => put({ surfaces: replaced(typed.surfaces, i, { condition: v }) })}
                    options={conditions}
                  />
                </>
              )}
            </div>
          );
        })}
        {typed.surfaces.some((s) => s.condition === 'worn' || s.condition === 'torn') && (
          <p className="caption">
            A worn or torn covering takes more air changes where none are entered: torn the leaky end of what such houses have, worn
            half-way there (common practice, no source). Air changes that are entered stand, and U-values do not move: bills tell those.
          </p>
        )}
        <FaultList faults={of('surfaces')} />
      </fieldset>
      <fieldset>
        <legend>Heating periods</legend>
        <p className="caption">
          {typed.periods.length === 0 ? 'As in the heating plan above.' : 'Own periods; the plan above is not used.'}
        </p>
        {typed.periods.map((p, i) => (
          <div key={i} className="form">
            <Field
              label="from, month/day"
              value={p.from}
              change={(v) => put({ periods: replaced(typed.periods, i, { from: v }) })}
              name=""
              faults={[]}
            />
            <Field
              label="to, month/day"
              value={p.to}
              change={(v) => put({ periods: replaced(typed.periods, i, { to: v }) })}
              name=""
              faults={[]}
            />
            <Field
              label={`night, ${degree}`}
              value={p.night}
              change={(v) => put({ periods: replaced(typed.periods, i, { night: v }) })}
              number={true}
              name=""
              faults={[]}
            />
            <Field
              label={`day, ${degree}`}
              value={p.day}
              change={(v) => put({ periods: replaced(typed.periods, i, { day: v }) })}
              number={true}
              name=""
              faults={[]}
            />
            <button className="link" type="button" onClick={() => put({ periods: typed.periods.filter((_, k) => k !== i) })}>
              take period {i + 1} out
            </button>
          </div>
        ))}
        <FaultList faults={of('heatingPeriods')} />
        <button
          className="link"
          type="button"
          onClick={() =>
            put({
              periods: [
                ...typed.periods,
                typed.periods.at(-1) ?? {
                  from: '2/15',
                  to: '5/31',
                  night: units === 'us' ? '60' : '15.6',
                  day: units === 'us' ? '65' : '18.3',
                },
              ],
            })
          }
        >
          {typed.periods.length === 0 ? 'own periods instead of the plan' : 'another period'}
        </button>
      </fieldset>
      <fieldset>
        <legend>Heaters</legend>
        {typed.heaters.map((h, i) => (
          <div key={i} className="form">
            <Choice
              label={`heater ${String(i + 1)}`}
              value={h.code}
              change={(v) => put({ heaters: replaced(typed.heaters, i, { code: v, fuel: fuelOfHeater(v, h.fuel) }) })}
              options={heaters}
            />
            <Choice
              label="burns"
              value={h.fuel}
              change={(v) => put({ heaters: replaced(typed.heaters, i, { fuel: v, code: heaterOfFuel(v, h.code) }) })}
              options={fuels}
            />
            <Field
              label={`rated input, ${units === 'us' ? 'Btu/h' : 'kW'}`}
              value={h.input}
              change={(v) => put({ heaters: replaced(typed.heaters, i, { input: v }) })}
              number={{ least: 0, grouped: units === 'us', such: units === 'us' ? '300000' : '90' }}
              name=""
              faults={[]}
            />
            <Field
              label="seasonal efficiency (empty: by kind)"
              value={h.efficiency}
              change={(v) => put({ heaters: replaced(typed.heaters, i, { efficiency: v }) })}
              number={{ least: 0, such: '0.8' }}
              name=""
              faults={[]}
            />
            <Field
              label="year it was set"
              value={h.year}
              change={(v) => put({ heaters: replaced(typed.heaters, i, { year: v }) })}
              number={{ whole: true, such: '2015' }}
              name=""
              faults={[]}
            />
            <button className="link" type="button" onClick={() => put({ heaters: typed.heaters.filter((_, k) => k !== i) })}>
              take heater {i + 1} out
            </button>
          </div>
        ))}
        {typed.heaters.some((h) => h.code === 'heatpump') && (
          <p className="caption">
            A heat pump that stands in the house is reckoned by its season&apos;s mean of heat over electricity, 2.3 where none is entered
            (common practice, no source); one that an option would put in goes by the temperature outside, hour by hour.
          </p>
        )}
        <FaultList faults={of('heaters')} />
        <button
          className="link"
          type="button"
          onClick={() =>
            put({
              heaters: [
                ...typed.heaters,
                { code: 'power', fuel: typed.heaters[0]?.fuel ?? 'PROPANE', input: '', efficiency: '', year: '' },
              ],
            })
          }
        >
          {typed.heaters.length === 0 ? 'enter the heater' : 'another heater'}
        </button>
      </fieldset>
      <fieldset>
        <legend>Tanks and meters</legend>
        {typed.supplies.map((s, i) => (
          <div key={i} className="form">
            <Choice
              label="fed by"
              value={s.id}
              change={(v) => put({ supplies: replaced(typed.supplies, i, { id: v }) })}
              options={supplies.map((g) => [g.id, g.name] as const)}
            />
            <Field
              label="heater number"
              value={s.heater}
              change={(v) => put({ supplies: replaced(typed.supplies, i, { heater: v }) })}
              number={{ whole: true, least: 1, such: '1' }}
              name=""
              faults={[]}
            />
            <Field
              label="share of the heat, %"
              value={s.share}
              change={(v) => put({ supplies: replaced(typed.supplies, i, { share: v }) })}
              number={{ least: 0, most: 100, such: '100' }}
              name=""
              faults={[]}
            />
            <button className="link" type="button" onClick={() => put({ supplies: typed.supplies.filter((_, k) => k !== i) })}>
              take supply {i + 1} out
            </button>
          </div>
        ))}
        <FaultList faults={of('supplies')} />
        {supplies.length > 0 && (
          <button
            className="link"
            type="button"
            onClick={() =>
              put({ supplies: [...typed.supplies, { id: supplies[0]?.id ?? '', heater: '1', share: typed.supplies.length ? '0' : '100' }] })
            }
          >
            another supply
          </button>
        )}
      </fieldset>
      <fieldset className="form">
        <legend>Already installed</legend>
        {retrofits.map(([code, name]) => (
          <label key={code}>
            <input
              type="checkbox"
              style={{ minHeight: 0 }}
              checked={typed.installed.includes(code)}
              onChange={(e) =>
                put({ installed: e.target.checked ? [...typed.installed, code] : typed.installed.filter((c) => c !== code) })
              }
            />{' '}
            {name}
          </label>
        ))}
      </fieldset>
      <fieldset className="form">
        <legend>What light and space are worth (empty: not counted)</legend>
        {plain('crop', `crop sales, $ a ${units === 'us' ? 'ft²' : 'm²'} and year`, 'cropUsdPerM2')}
        {plain('light', '% of sales lost per % of light', 'yieldPerLight')}
        {plain('space', 'worth of lost space, 0 to 1', 'spaceWorth')}
        {plain('shading', `worth of summer shade, $ a ${units === 'us' ? 'ft²' : 'm²'} and year`, 'shadingUsdPerM2')}
      </fieldset>
    </>
  );
}
