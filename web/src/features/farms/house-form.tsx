import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { Field } from '../../components/forms/field.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { LeaveForm } from '../../components/forms/ways-out.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import type { HouseQuery, SaveHouseInput } from '../../lib/graphql/generated/graphql.ts';
import { fromMetres, toMetres, type UnitSystem } from '../../lib/units/format.ts';
import { turnedLength } from '../../lib/units/turned.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { partsInput, partsOf, turnedParts, type TypedParts } from './house-parts.ts';
import { HousePartsForm } from './house-parts-form.tsx';
import { plans } from './house-words.ts';
import { typedNumber } from './save-hook.ts';

type EditedHouse = NonNullable<HouseQuery['house']>;

const Save = graphql(`
  mutation SaveHouse($input: SaveHouseInput!) {
    saveHouse(input: $input) {
      changeId
      conflict
      faults {
        code
        field
        message
        remedy
      }
    }
  }
`);

const turnedSizes = <T extends { width: string; length: string; wall: string; ridge: string }>(
  t: T,
  from: UnitSystem,
  to: UnitSystem,
): T => ({
  ...t,
  width: turnedLength(t.width, from, to),
  length: turnedLength(t.length, from, to),
  wall: turnedLength(t.wall, from, to),
  ridge: turnedLength(t.ridge, from, to),
});

/** What stands for the plan where none was told: own periods, or the plan that is taken for granted. */
const unplanned = (was: TypedParts, say: (words: string) => string) =>
  was.periods.length > 0 ? 'none: own periods, below' : `not told: ${say(plans[0][1])}`;

/** Changes a house; checks as one types, keeps what was typed, tells a conflict without losing it. */
export function HouseForm({ house, close }: { house: EditedHouse; close: () => void }) {
  const { units, say } = useUnits();
  const queries = useQueryClient();
  const {
    typed,
    set,
    was: began,
    changed,
  } = useTyped(
    (u) => ({
      name: house.name,
      width: fromMetres(house.widthM, u),
      length: fromMetres(house.lengthM, u),
      wall: fromMetres(house.sideWallM, u),
      ridge: fromMetres(house.ridgeM, u),
      air: house.airChangesPerHour?.toString() ?? '',
      plan: house.heatingPlanCode ?? '',
    }),
    turnedSizes,
  );
  const { typed: parts, set: setParts, was, changed: partsChanged } = useTyped((u) => partsOf(house, u), turnedParts);
  const kept = useUnsaved(changed || partsChanged);
  const [stored] = useState(house);
  // a size that nobody touched stays as it is told, not as it is rounded for its field
  const metres = (key: 'width' | 'length' | 'wall' | 'ridge', told: number | null | undefined) =>
    typed[key] === began[key] ? told : toMetres(typed[key], units);
  const [revision, setRevision] = useState(house.revision);
  const [theirsShown, showTheirs] = useState(false);
  const input = (checkOnly: boolean): SaveHouseInput => ({
    id: house.id,
    expectedRevision: revision,
    requestId: requestId(),
    checkOnly,
    house: {
      name: typed.name,
      widthM: metres('width', stored.widthM) ?? 0,
      lengthM: metres('length', stored.lengthM) ?? 0,
      sideWallM: metres('wall', stored.sideWallM) ?? null,
      ridgeM: metres('ridge', stored.ridgeM) ?? null,
      airChangesPerHour: typedNumber(typed.air),
      heatingPlanCode: typed.plan || null,
      seasonalEfficiency: house.seasonalEfficiency ?? null,
      parts: partsInput(parts, was, units),
    },
  });
  const form = useRef<HTMLFormElement>(null);
  const check = useMutation({ mutationFn: () => ask(Save, { input: input(true) }) });
  const save = useMutation({
    mutationFn: () => ask(Save, { input: input(false) }),
    onSuccess: async (d) => {
      if (d.saveHouse.changeId) {
        kept();
        await queries.invalidateQueries();
        close();
      }
    },
  });
  useEffect(() => {
    // what holds no number is said at its field; there is nothing to ask the server yet
    const timer = setTimeout(() => form.current?.checkValidity() && check.mutate(), 400);
    return () => clearTimeout(timer);
    // checked when what is typed changes, not when the mutation object does
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [typed, parts]);
  const faults = [...(check.data?.saveHouse.faults ?? []), ...(save.data?.saveHouse.faults ?? [])].filter(
    (f, i, all) => all.findIndex((g) => g.message === f.message) === i,
  );
  const conflict = save.data?.saveHouse.conflict;
  const field = (key: keyof typeof typed, label: string, name: string) => (
    <Field
      label={label}
      value={typed[key]}
      change={(v) => set({ ...typed, [key]: v })}
      name={name}
      faults={faults}
      number={key === 'name' ? undefined : true}
    />
  );
  const unit = units === 'us' ? 'ft' : 'm';
  return (
    <section aria-label="change the house">
      <h2>Change the house</h2>
      <p className="caption">What you leave empty takes its default, and the page says so. The study is then marked out of date.</p>
      <form
        ref={form}
        onSubmit={(e) => {
          e.preventDefault();
          save.mutate();
        }}
      >
        <div className="form">
          {field('name', 'name', 'name')}
          {field('width', `width of a bay, ${unit}`, 'widthM')}
          {field('length', `length, ${unit}`, 'lengthM')}
          {field('wall', `side wall, ${unit}`, 'sideWallM')}
          {field('ridge', `ridge, ${unit}`, 'ridgeM')}
          {field('air', 'air changes an hour', 'airChangesPerHour')}
          <label>
            <span>heating plan</span>
            <select
              value={typed.plan}
              onChange={(e) => {
                const plan = e.target.value;
                set({ ...typed, plan });
                // another plan takes own periods out, and shows it; the plan of before brings them back
                setParts({ ...parts, periods: plan === (house.heatingPlanCode ?? '') ? was.periods : [] });
              }}
            >
              {!house.heatingPlanCode && <option value="">{unplanned(was, say)}</option>}
              {plans.map(([k, v]) => (
                <option key={k} value={k}>
                  {say(v)}
                </option>
              ))}
            </select>
          </label>
        </div>
        <HousePartsForm typed={parts} change={setParts} faults={faults} supplies={house.farm.supplyGroups} />
        {conflict && (
          <p className="fault">
            Somebody saved this house meanwhile. What you typed is kept here.{' '}
            <button
              className="link"
              type="button"
              onClick={() => {
                setRevision(revision + 1);
                showTheirs(true);
                save.reset();
                void queries.invalidateQueries();
              }}
            >
              Show theirs around this form; the next save then puts yours over it
            </button>
          </p>
        )}
        {theirsShown && !conflict && <p role="status">The page around this form now shows theirs. Saving puts yours over it.</p>}
        {check.error && <p className="fault">{check.error.message}</p>}
        {save.error && <p className="fault">{save.error.message}</p>}
        <button className="filled" type="submit" disabled={save.isPending || faults.length > 0} aria-describedby="house-lacks">
          Save the house
        </button>{' '}
        <LeaveForm conflict={conflict} close={close} />{' '}
        <Lacking id="house-lacks" what={[faults.length > 0 && 'an answer that can be right where a field says what is wrong']} />
      </form>
    </section>
  );
}
