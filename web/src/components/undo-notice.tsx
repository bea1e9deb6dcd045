import { useMutation, useQueryClient } from '@tanstack/react-query';
import { FaultList } from './forms/fault-list.tsx';
import { ask, requestId } from '../lib/graphql/client.ts';
import { graphql } from '../lib/graphql/generated/index.ts';

const Undo = graphql(`
  mutation UndoHere($changeId: ID!, $requestId: ID!) {
    undo(changeId: $changeId, requestId: $requestId) {
      changeId
      faults {
        field
        message
        remedy
      }
    }
  }
`);

/** Says what was just done, and takes it back. */
export function UndoNotice({ said, changeId, close }: { said: string; changeId: string; close: () => void }) {
  const queries = useQueryClient();
  const undo = useMutation({
    mutationFn: () => ask(Undo, { changeId, requestId: requestId() }),
    onSuccess: async (d) => {
      if (d.undo.changeId) {
        await queries.invalidateQueries();
        close();
      }
    },
  });
  return (
    <p role="status">
      {said}{' '}
      <button className="link" disabled={undo.isPending} onClick={() => undo.mutate()}>
        undo
      </button>{' '}
      <FaultList faults={undo.data?.undo.faults ?? []} />
    </p>
  );
}
