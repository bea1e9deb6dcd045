import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { graphql } from '../lib/graphql/generated/index.ts';
import { ask, follow } from '../lib/graphql/client.ts';

const Start = graphql(`
  mutation StartStudy {
    startStudy {
      sameAs
      study {
        id
        number
      }
    }
  }
`);
const Cancel = graphql(`
  mutation CancelStudy($id: ID!) {
    cancelStudy(studyId: $id) {
      id
      state
    }
  }
`);
const Follow = graphql(`
  subscription Progress($id: ID!) {
    studyProgress(studyId: $id) {
      state
      share
      words
      optionsDone
      optionsTotal
    }
  }
`);

interface Props {
  newest?: { number: number; askedAt: string; futuresCount: number; changedSince: readonly string[] };
  running?: { id: string; number: number };
}

/** One line: up to date, out of date with its cause and the way out, or running with its progress and a way to stop it. */
export function StudyStatus({ newest, running }: Props) {
  const queries = useQueryClient();
  const again = () => void queries.invalidateQueries();
  const start = useMutation({ mutationFn: () => ask(Start, {}), onSuccess: again });
  const cancel = useMutation({ mutationFn: (id: string) => ask(Cancel, { id }), onSuccess: again });
  const progress = useProgress(running?.id, again);
  // a study may end before anybody could follow it: what was read before it ended is read again
  const known = useRef(newest?.number);
  useEffect(() => {
    if (known.current === newest?.number) return;
    known.current = newest?.number;
    void queries.invalidateQueries();
  }, [newest?.number, queries]);
  if (running) {
    return (
      <div className="status" role="status">
        <span>
          <b>Study {running.number} is running</b> {progress?.words ?? 'waiting'}{' '}
          {/* the words tell how far it is; every per cent read aloud would drown the page */}
          <progress value={progress?.share ?? 0} aria-label="progress of the study" />{' '}
          <span aria-hidden="true">{Math.round(100 * (progress?.share ?? 0))} %</span>
        </span>
        <button className="link" onClick={() => cancel.mutate(running.id)}>
          stop it
        </button>
      </div>
    );
  }
  if (!newest) {
    return (
      <div className="status" role="status">
        <span>No study yet: figures need one.</span>
        <button className="link" onClick={() => start.mutate()}>
          run the first study
        </button>
      </div>
    );
  }
  const changed = newest.changedSince;
  return (
    <div className="status" role="status">
      {changed.length === 0 ? (
        <span>
          <span className="dot" />
          <b>Up to date</b> study {newest.number} of {newest.askedAt.slice(0, 10)}: {newest.futuresCount.toLocaleString('en-US')} futures
        </span>
      ) : (
        <span className="warn">
          <span className="half" />
          <b>Out of date</b> {changed.slice(0, 3).join(', ')}
          {changed.length > 3 ? ` and ${String(changed.length - 3)} more` : ''} changed since study {newest.number}. The figures are still
          that study&apos;s.
        </span>
      )}
      {changed.length > 0 && (
        <button className="link" disabled={start.isPending} onClick={() => start.mutate()}>
          run study {newest.number + 1}
        </button>
      )}
      {start.error && <span className="fault">{start.error.message}</span>}
    </div>
  );
}

interface Progress {
  share: number;
  words: string;
}

function useProgress(id: string | undefined, end: () => void): Progress | undefined {
  const [progress, set] = useState<Progress>();
  useEffect(() => {
    if (!id) return undefined;
    return follow(Follow, { id }, (d) => set(d.studyProgress), end);
    // the end's handler only asks the queries anew
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [id]);
  return id ? progress : undefined;
}
