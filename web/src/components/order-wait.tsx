import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { ask, follow } from '../lib/graphql/client.ts';
import { graphql } from '../lib/graphql/generated/index.ts';
import { counted } from '../lib/units/format.ts';

const AtHand = graphql(`
  query FuturesAtHand {
    coop {
      newestStudy {
        id
        seconds
        optionCount
        futuresAtHand
      }
    }
  }
`);

const Progress = graphql(`
  subscription FuturesProgress($id: ID!) {
    futuresProgress(studyId: $id) {
      share
      words
    }
  }
`);

/** While an order is awaited: that the study's single futures are reckoned again, once after a start of the program, and how far that is. */
export function OrderWait() {
  const { data } = useQuery({ queryKey: ['futures-at-hand'], queryFn: () => ask(AtHand), staleTime: 0 });
  const study = data?.coop.newestStudy;
  const [progress, set] = useState<{ share: number; words: string }>();
  const id = study && !study.futuresAtHand ? study.id : undefined;
  useEffect(() => {
    if (!id) return undefined;
    return follow(
      Progress,
      { id },
      (d) => set(d.futuresProgress),
      () => undefined,
    );
  }, [id]);
  if (!study || !id) return <p className="quiet">Reading the order.</p>;
  return (
    <p role="status">
      Once after the program starts, the single futures of {counted(study.optionCount, 'option')} are reckoned again; the order needs them.
      {study.seconds ? ` The study itself took ${String(Math.max(1, Math.round(study.seconds)))} s.` : ''}{' '}
      <progress value={progress?.share ?? 0} aria-label="single futures reckoned" /> {progress?.words ?? 'waiting'}
    </p>
  );
}
