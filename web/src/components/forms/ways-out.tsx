import { useQueryClient } from '@tanstack/react-query';
import type { ReactNode } from 'react';

/** Closes a form without saving; where somebody else saved meanwhile, what the page shows is read anew, as the form told. */
export function LeaveForm({ conflict, close }: { conflict: boolean | undefined; close: () => void }) {
  const queries = useQueryClient();
  return (
    <button
      className="link"
      type="button"
      onClick={() => {
        if (conflict) void queries.invalidateQueries();
        close();
      }}
    >
      leave it as it was
    </button>
  );
}

const atOnce = (button: HTMLButtonElement | null) => button?.focus();

/** The way back from a question. It has the focus at once: whoever still holds the key that asked does not answer by it. */
export function WayBack({ take, children }: { take: () => void; children: ReactNode }) {
  return (
    <button className="link" type="button" ref={atOnce} onClick={take}>
      {children}
    </button>
  );
}
