import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { FieldFault } from '../../components/forms/fault-list.tsx';

interface Outcome {
  changeId?: string | null;
  conflict: boolean;
  faults: FieldFault[];
}

const CONFLICT: FieldFault = { message: 'Somebody saved this meanwhile.', remedy: 'Reload the page to see theirs, then do it again.' };

/** One act on a round or an award: what was typed stays where it was refused, and what is shown is read anew where it was kept. */
export function useAct<T>(act: (what: T) => Promise<Outcome>, done?: () => void) {
  const queries = useQueryClient();
  const run = useMutation({
    mutationFn: act,
    onSuccess: async (d) => {
      if (d.changeId) {
        await queries.invalidateQueries();
        done?.();
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
