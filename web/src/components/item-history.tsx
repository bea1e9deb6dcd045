import { useInfiniteQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ask } from '../lib/graphql/client.ts';
import { recorded } from '../lib/units/recorded.ts';
import { useUnits } from '../lib/units/units-context.tsx';
import { graphql } from '../lib/graphql/generated/index.ts';

const History = graphql(`
  query ItemHistory($id: ID!, $before: Int) {
    history(itemId: $id, first: 20, before: $before) {
      next
      items {
        revision
        at
        by
        said
        isDeleted
        differences {
          field
          title
          was
          is
          moves
        }
      }
    }
  }
`);

/** A field with what it was and what it is. */
function Difference({ title, was, is }: { title: string; was: string | null | undefined; is: string | null | undefined }) {
  const { units } = useUnits();
  const told = recorded(title, [was, is], units);
  return (
    <>
      {told.title}: {told.values.join(' → ')}
    </>
  );
}

/** Who changed what and when, field by field, newest first; read when it is opened. */
export function ItemHistory({ id, revision }: { id: string; revision: number }) {
  const [open, setOpen] = useState(false);
  const { data, error, fetchNextPage, hasNextPage } = useInfiniteQuery({
    queryKey: ['history', id, revision],
    queryFn: ({ pageParam }) => ask(History, { id, before: pageParam }),
    initialPageParam: null as number | null,
    getNextPageParam: (last) => last.history.next ?? undefined,
    enabled: open,
  });
  const rows = data?.pages.flatMap((p) => p.history.items) ?? [];
  return (
    <section className="controls">
      <h2>What was changed here</h2>
      <p className="caption">
        {revision === 1
          ? 'Entered once and not changed since.'
          : `Entered, and changed ${revision === 2 ? 'once' : `${String(revision - 1)} times`} since.`}{' '}
        <button className="link" aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? 'close the history' : 'show who changed what'}
        </button>
      </p>
      {error && <p className="fault">{error.message}</p>}
      {open &&
        rows.map((r) => (
          <div key={r.revision}>
            <p style={{ margin: '12px 0 0' }}>
              <b>{r.said}</b>{' '}
              <span className="quiet">
                {r.at.slice(0, 16).replace('T', ' ')} UTC, {r.by}
              </span>
              {r.isDeleted && ', deleted'}
            </p>
            {r.differences.length > 0 && (
              <ul className="small" style={{ margin: 0 }}>
                {r.differences.map((d) => (
                  <li key={d.field}>
                    <Difference title={d.title} was={d.was} is={d.is} /> {!d.moves && <span className="quiet">(moves no figure)</span>}
                  </li>
                ))}
              </ul>
            )}
          </div>
        ))}
      {open && hasNextPage && (
        <button className="link" onClick={() => void fetchNextPage()}>
          earlier changes
        </button>
      )}
    </section>
  );
}
