import type { ReactNode } from 'react';

/** A numbered point of a printed sheet. */
export function Point({ no, name, children }: { no: number; name: string; children: ReactNode }) {
  return (
    <p className="point">
      <b>
        {no} {name}.
      </b>{' '}
      {children}
    </p>
  );
}
