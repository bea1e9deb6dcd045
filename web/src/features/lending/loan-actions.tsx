import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { WayBack } from '../../components/forms/ways-out.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { DeleteLoanDocument, UndoLoanDocument } from './lending-queries.ts';

/** Deletes a case or a statement after asking, and offers to take it back. */
export function DeleteLoan({ id, revision, name, done }: { id: string; revision: number; name: string; done?: () => void }) {
  const [asked, setAsked] = useState(false);
  const queries = useQueryClient();
  const remove = useMutation({
    mutationFn: async () => (await ask(DeleteLoanDocument, { id, revision, requestId: requestId() })).deleteItem,
    onSuccess: async (d) => {
      if (d.changeId && !done) await queries.invalidateQueries();
    },
  });
  const undo = useMutation({
    mutationFn: async () => (await ask(UndoLoanDocument, { changeId: remove.data?.changeId ?? '', requestId: requestId() })).undo,
    onSuccess: async (d) => {
      if (d.changeId) {
        remove.reset();
        setAsked(false);
        await queries.invalidateQueries();
      }
    },
  });
  if (remove.data?.changeId)
    return (
      <span role="status">
        {name} is deleted.{' '}
        <button className="link" onClick={() => undo.mutate()}>
          undo
        </button>{' '}
        {done && (
          <button
            className="link"
            onClick={() => {
              void queries.invalidateQueries();
              done();
            }}
          >
            to all loans
          </button>
        )}
        <FaultList faults={undo.data?.faults ?? []} />
      </span>
    );
  return asked ? (
    <span key="asked">
      Delete {name}?{' '}
      <button className="link" disabled={remove.isPending} onClick={() => remove.mutate()}>
        yes, delete it
      </button>{' '}
      <WayBack take={() => setAsked(false)}>keep it</WayBack>
      {remove.data?.conflict && <span className="fault">Somebody changed it meanwhile. Look at it again.</span>}
      <FaultList faults={remove.data?.faults ?? []} />
      {remove.error && <span className="fault">{remove.error.message}</span>}
    </span>
  ) : (
    <button key="ask" className="link" onClick={() => setAsked(true)}>
      delete {name}
    </button>
  );
}
