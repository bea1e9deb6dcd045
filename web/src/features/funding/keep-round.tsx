import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useNavigate } from 'react-router';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import type { Rules } from './funding-rules.ts';
import { SaveRound } from './round-query.ts';

const RoundNames = graphql(`
  query RoundNames {
    coop {
      fundingRounds {
        id
        name
        revision
        state
      }
    }
  }
`);

/** Keeps the rules of the page as a round, or saves them to the open round that they came from. */
export function KeepRound({ rules }: { rules: Rules }) {
  const { data } = useQuery({ queryKey: ['round-names'], queryFn: () => ask(RoundNames) });
  const rounds = data?.coop.fundingRounds ?? [];
  const of = rounds.find((r) => r.id === rules.roundId && r.state === 'OPEN');
  const [name, setName] = useState('');
  const queries = useQueryClient();
  const navigate = useNavigate();
  const kept = useUnsaved(name !== '');
  const keep = useMutation({
    mutationFn: async () =>
      (
        await ask(SaveRound, {
          input: {
            id: of?.id ?? null,
            expectedRevision: of?.revision ?? null,
            requestId: requestId(),
            name: of?.name ?? name,
            rules: rules.input,
          },
        })
      ).saveRound,
    onSuccess: async (d) => {
      if (d.changeId && d.roundId) {
        kept();
        await queries.invalidateQueries();
        void navigate(`/rounds/${d.roundId}`);
      }
    },
  });
  const open = rounds.filter((r) => r.state === 'OPEN').length;
  return (
    <form
      aria-label="keep these rules as a round"
      onSubmit={(e) => {
        e.preventDefault();
        keep.mutate();
      }}
    >
      {!of && (
        <label>
          <span>name of the round</span>
          <input required value={name} onChange={(e) => setName(e.target.value)} placeholder="Round 3" />
        </label>
      )}
      <button className="filled" disabled={keep.isPending}>
        {of ? `Save to ${of.name}` : 'Keep as a round'}
      </button>
      <FaultList faults={keep.data?.faults ?? []} />
      {keep.data?.conflict && <p className="fault">Somebody changed the round meanwhile. Reload the page, then save again.</p>}
      {keep.error && <p className="fault">{keep.error.message}</p>}
      <p className="small">
        <Link to="/rounds">
          {rounds.length} {rounds.length === 1 ? 'round' : 'rounds'} kept, {open} open
        </Link>
      </p>
    </form>
  );
}
