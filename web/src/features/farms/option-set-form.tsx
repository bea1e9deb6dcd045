import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Choice } from '../../components/forms/field.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { OptionChoicesQuery, SaveOptionSetInput } from '../../lib/graphql/generated/graphql.ts';
import { fuelName, type Fuel } from '../../lib/units/format.ts';
import { OptionChoices, SaveOptions } from './farm-queries.ts';
import { FormFrame } from './form-frame.tsx';
import { NewTarget } from './new-target.tsx';
import { useSave } from './save-hook.ts';
import { useUnits } from '../../lib/units/units-context.tsx';

type House = NonNullable<OptionChoicesQuery['house']>;
type Timing = NonNullable<SaveOptionSetInput['options'][number]['timing']>;
interface Chosen {
  parts: string[];
  timing: Timing;
  /** Tank or meter that a switch of fuel moves to; null = the farm's first of that fuel, else the monthly index. */
  switchSupplyGroupId: string | null;
}

const NEW = 'new';

const timings = [
  ['NOW', 'now'],
  ['AT_FILM_CHANGE', 'at the next film change'],
  ['AT_HEATER_CHANGE', 'when the heater is due'],
] as const;

/** Which retrofits and combinations are studied for a house, and when each would be built. */
export function OptionSetForm({ houseId, close }: { houseId: string; close: () => void }) {
  const { data, error } = useQuery({ queryKey: ['option-choices', houseId], queryFn: () => ask(OptionChoices, { id: houseId }) });
  if (error) return <p className="fault">{error.message}</p>;
  return data?.house ? <Loaded houseId={houseId} house={data.house} close={close} /> : <p className="quiet">Reading the options.</p>;
}

function Loaded({ houseId, house, close }: { houseId: string; house: House; close: () => void }) {
  const { say } = useUnits();
  const [chosen, setChosen] = useState<Chosen[]>(
    house.options
      .filter((o) => o.parts.length > 0)
      .map((o) => ({ parts: o.parts, timing: o.timing, switchSupplyGroupId: o.switchSupplyGroupId ?? null })),
  );
  const [asLoaded] = useState(chosen);
  const [parts, setParts] = useState<string[]>([]);
  const [timing, setTiming] = useState<Timing>('NOW');
  const [adding, setAdding] = useState<{ at: number; fuel: Fuel }>();
  const switches = new Map(house.retrofitChoices.map((c) => [c.code, c.switchesTo]));
  const moveTo = (at: number, id: string | null) =>
    setChosen((all) => all.map((o, k) => (k === at ? { ...o, switchSupplyGroupId: id } : o)));
  const title = new Map(house.retrofitChoices.map((c) => [c.code, say(c.title)]));
  const save = useSave(
    async () => {
      const input: SaveOptionSetInput = {
        houseId,
        expectedRevision: house.optionSetRevision ?? null,
        requestId: requestId(),
        options: chosen,
      };
      return (await ask(SaveOptions, { input })).saveOptionSet;
    },
    close,
    parts.length > 0 || JSON.stringify(chosen) !== JSON.stringify(asLoaded),
  );
  if (adding) {
    return (
      <NewTarget
        farmId={house.farm.id}
        fuel={adding.fuel}
        known={house.farm.supplyGroups.map((g) => g.id)}
        done={(id) => {
          if (id) moveTo(adding.at, id);
          setAdding(undefined);
        }}
      />
    );
  }
  return (
    <FormFrame
      title="Choose which options are studied"
      button="Save the options"
      faults={save.data?.faults ?? []}
      shown={[]}
      conflict={save.data?.conflict ?? false}
      error={save.error}
      pending={save.isPending}
      submit={() => save.mutate()}
      close={close}
    >
      <div style={{ gridColumn: '1 / -1' }}>
        <ul>
          {chosen.map((o, i) => (
            <li key={o.parts.join() + o.timing}>
              {o.parts.map((p) => title.get(p) ?? p).join('; ')}, {timings.find(([t]) => t === o.timing)?.[1]}{' '}
              <button className="link" type="button" onClick={() => setChosen(chosen.filter((_, k) => k !== i))}>
                take out
              </button>
              {o.parts
                .map((p) => switches.get(p))
                .filter((f) => f != null)
                .map((fuel) => (
                  <Choice
                    key={fuel}
                    label={`${fuelName[fuel]} from`}
                    value={o.switchSupplyGroupId ?? ''}
                    change={(to) => (to === NEW ? setAdding({ at: i, fuel }) : moveTo(i, to || null))}
                    options={[
                      ['', "the farm's first of that fuel, else the monthly index"],
                      ...house.farm.supplyGroups
                        .filter((g) => g.fuel === fuel)
                        .map(
                          (g) =>
                            [
                              g.id,
                              `${g.name}, ${g.contract ? (g.contract.name ?? 'under its contract') : 'on the monthly index'}`,
                            ] as const,
                        ),
                      [NEW, 'a new tank or meter, with its contract'],
                    ]}
                  />
                ))}
            </li>
          ))}
        </ul>
        <fieldset>
          <legend>another option: one retrofit, or several together</legend>
          {house.retrofitChoices.map((c) => (
            <label key={c.code}>
              <input
                type="checkbox"
                style={{ minHeight: 0 }}
                disabled={!c.fits}
                checked={parts.includes(c.code)}
                onChange={(e) => setParts(e.target.checked ? [...parts, c.code] : parts.filter((p) => p !== c.code))}
              />{' '}
              {say(c.title)}
              {c.whyNot && <span className="caption">{c.whyNot}</span>}
            </label>
          ))}
          <Choice label="built" value={timing} change={(v) => setTiming(v as Timing)} options={timings} />
          <button
            className="link"
            type="button"
            aria-describedby="list-lacks"
            disabled={parts.length === 0}
            onClick={() => {
              setChosen([...chosen, { parts: [...parts].sort(), timing, switchSupplyGroupId: null }]);
              setParts([]);
            }}
          >
            put it on the list
          </button>{' '}
          <Lacking id="list-lacks" what={[parts.length === 0 && 'a tick at one retrofit or more']} />
        </fieldset>
      </div>
    </FormFrame>
  );
}
