import { Choice, Field } from '../../components/forms/field.tsx';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { HouseFinder } from '../../components/forms/house-finder.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { heatUnit } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { useAct } from './act-hook.ts';
import { emptyAward, emptyRound, inputOf, lacks, roundOf, turnedRound, type TypedAward, type TypedRound } from './entered-fields.ts';
import { type Entered, SaveEnteredRound, type Works } from './entered-query.ts';

interface Props {
  known?: Entered;
  works: Works;
  done: (roundId: string) => void;
  close?: () => void;
}

/** An earlier round with its awards, typed from its papers. */
export function EnteredForm({ known, works, done, close }: Props) {
  const { units } = useUnits();
  const { typed, set, changed } = useTyped<TypedRound>((u) => (known ? roundOf(known, u) : emptyRound()), turnedRound);
  const save = useAct(
    async () => (await ask(SaveEnteredRound, { input: inputOf(typed, units, requestId(), known) })).saveEnteredRound,
    (answer) => answer.roundId && done(answer.roundId),
    changed,
  );
  const put = (part: Partial<TypedRound>) => set({ ...typed, ...part });
  const change = (at: number, part: Partial<TypedAward>) => put({ awards: typed.awards.map((a, i) => (i === at ? { ...a, ...part } : a)) });
  const missing = lacks(typed);
  const field = (
    key: 'name' | 'decidedOn' | 'rulesInShort' | 'budget',
    label: string,
    more: { type?: string; number?: true; hint?: string } = {},
  ) => (
    <Field
      label={label}
      value={typed[key]}
      change={(v) => put({ [key]: v })}
      name={key === 'budget' ? 'budgetUsd' : key}
      faults={save.faults}
      {...more}
    />
  );
  return (
    <form
      aria-label={known ? 'Mend the round' : 'An earlier round'}
      onSubmit={(e) => {
        e.preventDefault();
        save.run();
      }}
    >
      <section>
        <h2>{known ? 'What its papers say' : 'The round'}</h2>
        <div className="form">
          {field('name', 'name of the round')}
          {field('decidedOn', 'decided on', { type: 'date' })}
          {field('budget', 'budget, $', { number: true, hint: 'empty: the sum of the grants' })}
          {field('rulesInShort', 'its rules in short')}
        </div>
        {typed.awards.map((a, i) => (
          <AwardFields
            key={a.key}
            award={a}
            at={i}
            works={works}
            faults={save.faults}
            change={(part) => change(i, part)}
            {...(a.id || typed.awards.length === 1 ? {} : { drop: () => put({ awards: typed.awards.filter((x) => x !== a) }) })}
          />
        ))}
        <p>
          <button type="button" className="link" onClick={() => put({ awards: [...typed.awards, emptyAward()] })}>
            add an award
          </button>
        </p>
        <FaultList faults={save.faults.filter((f) => !f.field || ['awards', 'id'].includes(f.field))} />
        <button className="filled" aria-describedby="entered-lacks" disabled={save.pending || missing.some(Boolean)}>
          Keep the round
        </button>{' '}
        {close && (
          <button className="link" type="button" onClick={close}>
            leave it as it was
          </button>
        )}{' '}
        <Lacking id="entered-lacks" what={missing} />
      </section>
    </form>
  );
}

interface AwardProps {
  award: TypedAward;
  at: number;
  works: Works;
  faults: Parameters<typeof FaultList>[0]['faults'];
  change: (part: Partial<TypedAward>) => void;
  drop?: () => void;
}

function AwardFields({ award: a, at, works, faults, change, drop }: AwardProps) {
  const { units, say } = useUnits();
  const mine = faults.filter((f) => f.field?.startsWith(`awards.${String(at)}.`));
  const choices = works.map((w) => [w.retrofitCode, say(w.retrofitTitle)] as const);
  const field = (key: keyof TypedAward, label: string, more: { type?: string; number?: true } = { number: true }) => (
    <Field label={label} value={a[key]?.toString() ?? ''} change={(v) => change({ [key]: v })} name={key} faults={[]} {...more} />
  );
  return (
    <fieldset>
      <legend>Award {at + 1}</legend>
      <div className="form">
        <HouseFinder label={`house of award ${String(at + 1)}`} value={a.houseId} change={(houseId) => change({ houseId })} />
        <Choice label="what was paid for" value={a.part} change={(part) => change({ part })} options={choices} />
        <Choice label="and" value={a.also} change={(also) => change({ also })} options={[['', 'nothing else'], ...choices]} />
        {field('grant', 'grant, $')}
        {field('outlay', 'whole cost, $')}
        {field('paid', 'paid, $')}
        {field('installedOn', 'installed on', { type: 'date' })}
        {field('promised', `promised, ${heatUnit(units)} of fuel a season`)}
        {field('promisedLow', 'promised, one in ten lower')}
        {field('promisedHigh', 'promised, one in ten higher')}
        {!a.id && (
          <>
            {field('share', 'delivered, % of promised')}
            {field('low', 'delivered, one in twenty lower, %')}
            {field('high', 'delivered, one in twenty higher, %')}
            {field('words', 'what stands behind it', {})}
          </>
        )}
      </div>
      <FaultList faults={mine} />
      {drop && (
        <button type="button" className="link" onClick={drop}>
          leave this award out
        </button>
      )}
    </fieldset>
  );
}
