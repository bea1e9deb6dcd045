import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Field } from '../../components/forms/field.tsx';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { HouseFinder } from '../../components/forms/house-finder.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { readNumber } from '../../lib/units/typed-number.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import type { EvidenceKind } from '../../lib/graphql/generated/graphql.ts';
import type { EvidenceCoop } from './trials-query.ts';
import { useUnits } from '../../lib/units/units-context.tsx';

const Add = graphql(`
  mutation AddEvidence($input: EvidenceInput!) {
    addEvidence(input: $input) {
      changeId
      words
      faults {
        field
        message
        remedy
      }
    }
  }
`);

const empty = { retrofit: '', kind: 'PUBLISHED', as: 'saving', like: '', value: '', low: '', high: '', source: '', site: '', note: '' };

/** A result from a report or a neighbour's trial, with its interval and its source; looked at before it is kept. */
export function EvidenceForm({ coop }: { coop: EvidenceCoop }) {
  const { say } = useUnits();
  const [typed, set] = useState({ ...empty, retrofit: coop.realisedFactors[0]?.retrofitCode ?? '', like: coop.houses.items[0]?.id ?? '' });
  const kept = useUnsaved([typed.value, typed.low, typed.high, typed.source, typed.site, typed.note].some((t) => t !== ''));
  const queries = useQueryClient();
  const saving = typed.as === 'saving';
  const limits = saving ? { most: 100, such: '27.5' } : { least: 0, such: '0.9' };
  const number = (text: string) => (readNumber(text, limits).value ?? Number.NaN) / (saving ? 100 : 1);
  const run = useMutation({
    mutationFn: async (checkOnly: boolean) =>
      (
        await ask(Add, {
          input: {
            requestId: requestId(),
            retrofitCode: typed.retrofit,
            kind: typed.kind as EvidenceKind,
            source: typed.source,
            site: typed.site || null,
            note: typed.note || null,
            value: number(typed.value),
            low: number(typed.low),
            high: number(typed.high),
            likeHouseId: saving ? typed.like : null,
            checkOnly,
          },
        })
      ).addEvidence,
    onSuccess: (d) => {
      if (d.changeId) {
        kept();
        set({ ...typed, value: '', low: '', high: '', source: '', site: '', note: '' });
        void queries.invalidateQueries();
      }
    },
  });
  const figures = [typed.value, typed.low, typed.high];
  const unanswered = figures.some((t) => t.trim() === '');
  const ready = figures.every((t) => Number.isFinite(number(t)));
  const put = (part: Partial<typeof typed>) => {
    set({ ...typed, ...part });
    run.reset();
  };
  const field = (key: 'value' | 'low' | 'high' | 'source' | 'site' | 'note', label: string) => (
    <Field
      label={label}
      value={typed[key]}
      change={(v) => put({ [key]: v })}
      name={key}
      faults={run.data?.faults ?? []}
      number={key === 'value' || key === 'low' || key === 'high' ? limits : undefined}
    />
  );
  const choice = (key: 'retrofit' | 'kind' | 'as', label: string, options: readonly (readonly [string, string])[]) => (
    <label>
      <span>{label}</span>
      <select value={typed[key]} onChange={(e) => put({ [key]: e.target.value })}>
        {options.map(([code, words]) => (
          <option key={code} value={code}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
  return (
    <section>
      <h2>Add a result by hand</h2>
      <p className="caption">
        From a report, another co-op or a neighbour. A saving in per cent is set against what the model expects of a house like the one
        measured; only the factor is carried on.
      </p>
      <div className="form">
        {choice(
          'retrofit',
          'retrofit',
          coop.realisedFactors.map((f) => [f.retrofitCode, say(f.retrofitTitle)] as const),
        )}
        {choice('kind', 'what it is', [
          ['PUBLISHED', 'a published result'],
          ['JUDGED', 'somebody’s judgement'],
        ])}
        {choice('as', 'told as', [
          ['saving', 'saving of heat, %'],
          ['factor', 'factor, measured over modelled'],
        ])}
        {saving && <HouseFinder label="on a house like" value={typed.like} change={(like) => put({ like })} />}
        {field('value', saving ? 'result, %' : 'result')}
        {field('low', saving ? 'one in twenty is lower, %' : 'one in twenty is lower')}
        {field('high', saving ? 'one in twenty is higher, %' : 'one in twenty is higher')}
        {field('source', 'source: who, where, when')}
        {field('site', 'site, where several results come from one')}
        {field('note', 'remark')}
      </div>
      <p>
        <button className="link" disabled={!ready || run.isPending} onClick={() => run.mutate(true)}>
          Look at it
        </button>{' '}
        <button className="filled" aria-describedby="evidence-lacks" disabled={!ready || run.isPending} onClick={() => run.mutate(false)}>
          Keep the evidence
        </button>{' '}
        <Lacking
          id="evidence-lacks"
          what={[unanswered && 'the result with both its ends', !unanswered && !ready && 'a result and ends that can be right']}
        />
      </p>
      <div aria-live="polite">
        {run.data?.words && (
          <p>
            {run.data.words} {run.data.changeId ? 'Kept.' : 'Not kept yet.'}
          </p>
        )}
        {run.data?.faults
          .filter((f) => !f.field || !['value', 'low', 'high', 'source', 'site', 'note'].includes(f.field))
          .map((f) => (
            <p key={f.message} className="fault">
              {f.message} {f.remedy}
            </p>
          ))}
        {run.error && <p className="fault">{run.error.message}</p>}
      </div>
    </section>
  );
}
