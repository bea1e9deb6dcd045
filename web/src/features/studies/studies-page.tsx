import { useQuery } from '@tanstack/react-query';
import { ask } from '../../lib/graphql/client.ts';
import { ChangeList } from './change-list.tsx';
import { Comparison } from './comparison.tsx';
import { StudyList } from './study-list.tsx';
import { Studies } from './study-queries.ts';

export function StudiesPage() {
  const { data, error } = useQuery({ queryKey: ['studies'], queryFn: () => ask(Studies) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the studies.</p>;
  const { studies, changes } = data.coop;
  return (
    <>
      <h1>
        <b>{studies.length}</b> {studies.length === 1 ? 'study' : 'studies'}; each keeps its inputs, seed and version, and the same inputs
        give the same figures bit for bit.
      </h1>
      <StudyList studies={studies} />
      <Comparison studies={studies} />
      <ChangeList changes={changes} />
    </>
  );
}
