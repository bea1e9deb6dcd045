import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { readNumber } from '../../lib/units/typed-number.ts';
import type { FieldFault } from '../../components/forms/fault-list.tsx';

export interface Saved {
  changeId?: string | null;
  conflict: boolean;
  faults: FieldFault[];
}

/** Saves, refreshes what is shown and closes the form; what was typed stays where the save was refused, and its page is not left without a word. */
export function useSave(save: () => Promise<Saved>, done: () => void, changed: boolean) {
  const queries = useQueryClient();
  const kept = useUnsaved(changed);
  return useMutation({
    mutationFn: save,
    onSuccess: async (d) => {
      if (d.changeId) {
        kept();
        await queries.invalidateQueries();
        done();
      }
    },
  });
}

export const CONFLICT = 'Somebody saved this meanwhile. What you typed is kept; close the form to see theirs, then change it again.';

/** A number typed, or null where the field is empty; what is no number is NaN, which no form sends. */
export const typedNumber = (t: string): number | null => readNumber(t).value;
