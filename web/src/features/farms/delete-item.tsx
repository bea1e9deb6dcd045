import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

const Going = graphql(`
  query GoingWith($id: ID!) {
    goingWith(id: $id) {
      id
      kind
      name
    }
  }
`);
const Delete = graphql(`
  mutation DeleteItem($id: ID!, $revision: Int!, $requestId: ID!) {
    deleteItem(id: $id, expectedRevision: $revision, requestId: $requestId) {
      ...Saved
    }
  }
`);

/** Deletes an item after saying what goes with it; the changes page can undo it. */
export function DeleteItem({ id, revision, name, done }: { id: string; revision: number; name: string; done: (changeId: string) => void }) {
  const [asked, setAsked] = useState(false);
  const queries = useQueryClient();
  const going = useQuery({ queryKey: ['going', id], queryFn: () => ask(Going, { id }), enabled: asked });
  const remove = useMutation({
    mutationFn: () => ask(Delete, { id, revision, requestId: requestId() }),
    onSuccess: (d) => {
      if (d.deleteItem.changeId) {
        done(d.deleteItem.changeId);
        void queries.invalidateQueries();
      }
    },
  });
  if (!asked) {
    return (
      <button className="link" onClick={() => setAsked(true)}>
        delete {name}
      </button>
    );
  }
  const others = (going.data?.goingWith ?? []).filter((g) => g.id !== id);
  const answer = remove.data?.deleteItem;
  return (
    <section role="alertdialog" aria-label={`delete ${name}`}>
      <p>
        {others.length > 0
          ? `With ${name} ${others.length === 1 ? 'goes' : 'go'}: ${others.map((g) => (g.name ? `${g.kind} ${g.name}` : g.kind)).join(', ')}.`
          : `Nothing else goes with ${name}.`}{' '}
        The history keeps all of it, and you can undo this.
      </p>
      {answer?.conflict && <p className="fault">Somebody changed {name} meanwhile. Look at it again, then delete it.</p>}
      <FaultList faults={answer?.faults ?? []} />
      {remove.error && <p className="fault">{remove.error.message}</p>}
      <button className="filled" disabled={!going.data || remove.isPending} onClick={() => remove.mutate()}>
        Delete {name}
      </button>{' '}
      <button className="link" onClick={() => setAsked(false)}>
        keep it
      </button>
    </section>
  );
}
