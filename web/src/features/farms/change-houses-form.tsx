import { Choice, Field } from '../../components/forms/field.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { FormFrame } from './form-frame.tsx';
import { coverings, plans } from './house-words.ts';
import { ChangeHouses } from './houses-queries.ts';
import { typedNumber, useSave } from './save-hook.ts';

interface Props {
  houseIds: readonly string[];
  close: () => void;
  done: (said: string, changeId: string) => void;
}

/** One answer for many houses, as one change that one undo takes back. */
export function ChangeHousesForm({ houseIds, close, done }: Props) {
  const { say } = useUnits();
  const { typed, set, changed } = useTyped(() => ({ covering: '', filmYear: '', plan: '', air: '' }));
  const count = `${String(houseIds.length)} ${houseIds.length === 1 ? 'house' : 'houses'}`;
  const save = useSave(
    async () => {
      const { changeHouses } = await ask(ChangeHouses, {
        input: {
          requestId: requestId(),
          houseIds: [...houseIds],
          coveringCode: typed.covering || null,
          filmYear: typedNumber(typed.filmYear),
          heatingPlanCode: typed.plan || null,
          airChangesPerHour: typedNumber(typed.air),
        },
      });
      if (changeHouses.changeId) done(`${count} changed alike.`, changeHouses.changeId);
      return changeHouses;
    },
    close,
    changed,
  );
  // a wrong answer is wrong on every house: the first says it, the rest are counted
  const all = save.data?.faults ?? [];
  const faults = all
    .slice(0, 1)
    .map((f) => (all.length > 1 ? { ...f, remedy: `${f.remedy} The same on ${String(all.length - 1)} more.` } : f));
  const put = (changed: Partial<typeof typed>) => {
    save.reset();
    set({ ...typed, ...changed });
  };
  const empty = Object.values(typed).every((t) => t.trim() === '');
  return (
    <section>
      <FormFrame
        title={`Change ${count} alike`}
        button={`Change ${count}`}
        faults={faults}
        shown={['airChangesPerHour']}
        conflict={save.data?.conflict ?? false}
        error={save.error}
        pending={save.isPending || empty}
        submit={() => save.mutate()}
        close={close}
      >
        <Choice
          label="covering of the roof"
          value={typed.covering}
          change={(covering) => put({ covering })}
          options={[['', 'each keeps its own'], ...coverings]}
        />
        <Field
          label="year it was put on"
          value={typed.filmYear}
          change={(filmYear) => put({ filmYear })}
          name="filmYear"
          faults={faults}
          number={{ whole: true, such: '2024' }}
        />
        <Choice
          label="heating plan"
          value={typed.plan}
          change={(plan) => put({ plan })}
          options={[['', 'each keeps its own'], ...plans.map(([code, name]) => [code, say(name)] as const)]}
        />
        <Field
          label="air changes an hour"
          value={typed.air}
          change={(air) => put({ air })}
          name="airChangesPerHour"
          faults={faults}
          number
        />
      </FormFrame>
    </section>
  );
}
