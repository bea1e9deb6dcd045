import { useQuery } from '@tanstack/react-query';
import { useSearchParams } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import { ChangeList } from './change-list.tsx';
import { Comparison } from './comparison.tsx';
import { StudyList } from './study-list.tsx';
import { Studies } from './study-queries.ts';

export function StudiesPage() {
  const [params, setParams] = useSearchParams();
  const before = Number(params.get('before') ?? '') || null;
  const { data, error } = useQuery({ queryKey: ['studies', before], queryFn: () => ask(Studies, { before }), placeholderData: (d) => d });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the studies.</p>;
  const { studies, studyTotal, changes } = data.coop;
  const last = studies.at(-1);
  return (
    <>
      <h1>
        <b>{studyTotal}</b> {studyTotal === 1 ? 'study' : 'studies'}; each keeps its inputs, seed and version, and the same inputs give the
        same figures bit for bit.
      </h1>
      <StudyList studies={studies} />
      <p className="below">
        {last && last.number > 1 && (
          <button className="link" onClick={() => setParams({ before: String(last.number) })}>
            earlier studies
          </button>
        )}
        {before && (
          <button className="link" onClick={() => setParams({})}>
            the newest
          </button>
        )}
      </p>
      <Comparison studies={studies} />
      <ChangeList changes={changes} />
    </>
  );
}
