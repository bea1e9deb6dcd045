import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Choice } from '../../components/forms/field.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { OptionChoicesQuery, SaveOptionSetInput } from '../../lib/graphql/generated/graphql.ts';
import { OptionChoices, SaveOptions } from './farm-queries.ts';
import { FormFrame } from './form-frame.tsx';
import { useSave } from './save-hook.ts';
import { useUnits } from '../../lib/units/units-context.tsx';

type House = NonNullable<OptionChoicesQuery['house']>;
type Timing = NonNullable<SaveOptionSetInput['options'][number]['timing']>;
interface Chosen {
  parts: string[];
  timing: Timing;
}

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
    house.options.filter((o) => o.parts.length > 0).map((o) => ({ parts: o.parts, timing: o.timing })),
  );
  const [parts, setParts] = useState<string[]>([]);
  const [timing, setTiming] = useState<Timing>('NOW');
  const title = new Map(house.retrofitChoices.map((c) => [c.code, say(c.title)]));
  const save = useSave(async () => {
    const input: SaveOptionSetInput = {
      houseId,
      expectedRevision: house.optionSetRevision ?? null,
      requestId: requestId(),
      options: chosen,
    };
    return (await ask(SaveOptions, { input })).saveOptionSet;
  }, close);
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
              setChosen([...chosen, { parts: [...parts].sort(), timing }]);
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
