import { Link } from 'react-router';
import { goToCoop } from '../lib/graphql/chosen-coop.ts';

interface Props {
  coops: readonly { id: string; name: string; isDemo: boolean; isChosen: boolean }[];
}

/** Chooses among one's co-ops; where there is only the example, leads to a first one of one's own. */
export function CoopSwitch({ coops }: Props) {
  if (coops.length < 2) return <Link to="/co-ops">{coops[0]?.isDemo ? 'start your own co-op' : 'co-ops'}</Link>;
  return (
    <span>
      <select
        aria-label="co-op"
        className="small"
        value={coops.find((c) => c.isChosen)?.id}
        onChange={(e) => goToCoop(e.target.value, '/')}
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
