import type { ReactNode } from 'react';

/** A sheet of paper: on the screen with the way to print it, on paper alone with its foot. */
export function Sheet({ children, foot, invented, acts }: { children: ReactNode; foot: string; invented: boolean; acts: ReactNode }) {
  return (
    <article className="sheet">
      <p className="acts unprinted">
        <button className="link" onClick={() => window.print()}>
          print it
        </button>
        {acts}
      </p>
      {children}
      <p className="sheet-foot small quiet">
        {foot}. {invented ? 'Invented example.' : ''} Modelled with stated ranges, no promise.
      </p>
    </article>
  );
}
