import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import type { FieldFault } from '../../components/forms/fault-list.tsx';

interface Outcome {
  changeId?: string | null;
  conflict: boolean;
  faults: FieldFault[];
}

const CONFLICT: FieldFault = { message: 'Somebody saved this meanwhile.', remedy: 'Reload the page to see theirs, then do it again.' };

/** One act on a round or an award: what was typed stays where it was refused, its page is not left without a word while it is not saved, and what is shown is read anew where it was kept. */
export function useAct<T, O extends Outcome>(act: (what: T) => Promise<O>, done?: (outcome: O) => void, changed = false) {
  const queries = useQueryClient();
  const kept = useUnsaved(changed);
  const run = useMutation({
    mutationFn: async (what: T) => {
      const outcome = await act(what);
      if (outcome.changeId) kept();
      return outcome;
    },
    onSuccess: async (d) => {
      if (d.changeId) {
        await queries.invalidateQueries();
        done?.(d);
      }
    },
  });
  const faults: FieldFault[] = [
    ...(run.data?.faults ?? []),
    ...(run.data?.conflict ? [CONFLICT] : []),
    ...(run.error ? [{ message: run.error.message, remedy: '' }] : []),
  ];
  return { run: run.mutate, pending: run.isPending, faults };
}
