import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

const Studies = graphql(`
  query Studies {
    coop {
      studies {
        id
        number
        state
        askedBy
        askedAt
        seconds
        houseCount
        optionCount
        inputSha256
        resultSha256
        futuresSha256
        programVersion
        failure
        changedSince
      }
      changes(first: 30) {
        id
        seq
        at
        said
        isUndo
        itemCount
      }
    }
  }
`);
const Undo = graphql(`
  mutation Undo($id: ID!, $requestId: ID!) {
    undo(changeId: $id, requestId: $requestId) {
      changeId
      faults {
        message
        remedy
      }
    }
  }
`);

export function StudiesPage() {
  const queries = useQueryClient();
  const { data, error } = useQuery({ queryKey: ['studies'], queryFn: () => ask(Studies) });
  const undo = useMutation({
    mutationFn: (id: string) => ask(Undo, { id, requestId: requestId() }),
    onSuccess: () => queries.invalidateQueries(),
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the studies.</p>;
  const { studies, changes } = data.coop;
  return (
    <>
      <h1>
        <b>{studies.length}</b> {studies.length === 1 ? 'study' : 'studies'}; each keeps its inputs, seed and version, and the same inputs
        give the same figures bit for bit.
      </h1>
      <section>
        <h2>Studies</h2>
        <div className="scroll" role="region" aria-label="table, scrolls sideways" tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">study</th>
                <th scope="col">asked</th>
                <th scope="col">state</th>
                <th scope="col" className="n">
                  houses
                </th>
                <th scope="col" className="n">
                  options
                </th>
                <th scope="col" className="n">
                  seconds
                </th>
                <th scope="col">inputs, futures, result</th>
                <th scope="col">changed since</th>
              </tr>
            </thead>
            <tbody>
              {studies.map((s) => (
                <tr key={s.id}>
                  <td>{s.number}</td>
                  <td>
                    {s.askedAt.slice(0, 16).replace('T', ' ')} by {s.askedBy}
                  </td>
                  <td>
                    {s.state}
                    {s.failure ? `: ${s.failure}` : ''}
                  </td>
                  <td className="n">{s.houseCount || ''}</td>
                  <td className="n">{s.optionCount || ''}</td>
                  <td className="n">{s.seconds?.toFixed(1) ?? ''}</td>
                  <td className="small quiet">
                    {s.inputSha256.slice(0, 8)} {s.futuresSha256?.slice(0, 8)} {s.resultSha256?.slice(0, 8)}; program {s.programVersion}
                  </td>
                  <td>{s.changedSince.length === 0 ? 'nothing' : s.changedSince.slice(0, 3).join(', ')}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </section>
      <section>
        <h2>Changes</h2>
        <p className="caption">Every act, newest first. Undoing lays the text of before on top; nothing is lost.</p>
        {undo.data?.undo.faults.map((f) => (
          <p key={f.message} className="fault">
            {f.message} {f.remedy}
          </p>
        ))}
        <table>
          <thead>
            <tr>
              <th scope="col">when</th>
              <th scope="col">what</th>
              <th scope="col" className="n">
                items
              </th>
              <th scope="col">take back</th>
            </tr>
          </thead>
          <tbody>
            {changes.map((c) => (
              <tr key={c.id}>
                <td>{c.at.slice(0, 16).replace('T', ' ')}</td>
                <td>{c.said}</td>
                <td className="n">{c.itemCount}</td>
                <td>
                  {c.seq > 1 && (
                    <button className="link" onClick={() => undo.mutate(c.id)}>
                      undo
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}
