import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { ask, follow } from '../../lib/graphql/client.ts';
import { CancelRunAgain, FollowRunAgain, RunAgain } from './study-queries.ts';
import type { Study } from './study-list.tsx';

type Run = NonNullable<Study['newestRunAgain']>;

/** Runs a study again from its frozen inputs, in the queue of studies, and says whether every figure came out the same. */
export function RunStudyAgain({ study }: { study: Study }) {
  const queries = useQueryClient();
  const read = () => queries.invalidateQueries({ queryKey: ['studies'] });
  const again = useMutation({ mutationFn: () => ask(RunAgain, { id: study.id }), onSuccess: read });
  const stop = useMutation({ mutationFn: (id: string) => ask(CancelRunAgain, { id }), onSuccess: read });
  const run = study.newestRunAgain ?? undefined;
  const going = run && (run.state === 'queued' || run.state === 'running') ? run : undefined;
  const progress = useProgress(going?.id, () => void read());
  if (!study.canRunAgain)
    return <span className="small second">made by another version of the numbers: it can be read, not run again</span>;
  const hidden = <span className="hidden"> study {study.number}</span>;
  return (
    <>
      {going ? (
        <button className="link" disabled={stop.isPending} onClick={() => stop.mutate(going.id)}>
          stop running it again{hidden}
        </button>
      ) : (
        <button className="link" disabled={again.isPending} onClick={() => again.mutate()}>
          run again and compare{hidden}
        </button>
      )}
      <span className="small second" role="status">
        {going && (
          <>
            {progress?.words ?? 'waiting'}{' '}
            <progress value={progress?.share ?? 0} aria-label={`progress of study ${String(study.number)} run again`} />
            {study.seconds ? ` the first time took ${study.seconds.toFixed(0)} s` : ''}
          </>
        )}
        {!going && run && <Outcome run={run} />}
        {(again.error ?? stop.error) && <span className="fault">{(again.error ?? stop.error)?.message}</span>}
      </span>
    </>
  );
}

function Outcome({ run }: { run: Run }) {
  if (run.state === 'cancelled') return <>stopped; nothing was compared</>;
  if (run.state === 'failed') return <span className="fault">{run.failure}</span>;
  const [stored, now] = [run.storedSha256, run.againSha256].map((sha) => (sha ?? '').slice(0, 12));
  return run.same ? (
    <>
      the same, bit for bit: checksum {now}, {run.seconds?.toFixed(1)} s, on {run.askedAt.slice(0, 10)}
    </>
  ) : (
    <span className="fault">
      not the same: {stored} stored, {now} now; first {run.firstDifference}
    </span>
  );
}

function useProgress(id: string | undefined, end: () => void): { share: number; words: string } | undefined {
  const [progress, set] = useState<{ share: number; words: string }>();
  useEffect(() => {
    if (!id) return undefined;
    return follow(FollowRunAgain, { id }, (d) => set(d.runAgainProgress), end);
    // the end's handler only asks the studies anew
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [id]);
  return id ? progress : undefined;
}
