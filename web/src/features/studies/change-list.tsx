import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { StudiesQuery } from '../../lib/graphql/generated/graphql.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { Undo } from './study-queries.ts';

/** Every act, newest first, each of which can be taken back. */
export function ChangeList({ changes }: { changes: StudiesQuery['coop']['changes'] }) {
  const queries = useQueryClient();
  const undo = useMutation({
    mutationFn: (id: string) => ask(Undo, { id, requestId: requestId() }),
    onSuccess: () => queries.invalidateQueries(),
  });
  return (
    <section>
      <h2>Changes</h2>
      <p className="caption">Every act, newest first. Undoing lays the text of before on top; nothing is lost.</p>
      {undo.data?.undo.faults.map((f) => (
        <p key={f.message} className="fault" role="alert">
          {f.message} {f.remedy}
        </p>
      ))}
      <table className="stack">
        <caption className="hidden">changes</caption>
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">when</th>
            <th scope="col" className="n">
              items
            </th>
            <th scope="col">take back</th>
          </tr>
        </thead>
        <tbody>
          {changes.map((c) => (
            <tr key={c.id}>
              <td>{c.said}</td>
              <td>{c.at.slice(0, 16).replace('T', ' ')}</td>
              <td className="n" data-name="items">
                {c.itemCount}
              </td>
              <td>
                {c.seq > 1 && (
                  <button className="link" onClick={() => undo.mutate(c.id)}>
                    undo<span className="hidden"> {c.said}</span>
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
