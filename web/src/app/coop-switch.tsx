import { useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from 'react-router';
import { chooseCoop } from '../lib/graphql/chosen-coop.ts';

interface Props {
  coops: readonly { id: string; name: string; isDemo: boolean; isChosen: boolean }[];
}

/** Chooses among one's co-ops; where there is only the example, leads to a first one of one's own. */
export function CoopSwitch({ coops }: Props) {
  const queries = useQueryClient();
  const navigate = useNavigate();
  if (coops.length < 2) return <Link to="/co-ops">{coops[0]?.isDemo ? 'start your own co-op' : 'co-ops'}</Link>;
  return (
    <span>
      <select
        aria-label="co-op"
        className="small"
        value={coops.find((c) => c.isChosen)?.id}
        onChange={async (e) => {
          chooseCoop(e.target.value);
          await navigate('/');
          await queries.resetQueries();
        }}
      >
        {coops.map((c) => (
          <option key={c.id} value={c.id}>
            {c.name}
            {c.isDemo ? ' (example)' : ''}
          </option>
        ))}
      </select>{' '}
      <Link to="/co-ops">co-ops</Link>
    </span>
  );
}
