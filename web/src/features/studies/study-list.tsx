import type { StudiesQuery } from '../../lib/graphql/generated/graphql.ts';
import { RunStudyAgain } from './run-again.tsx';

export type Study = StudiesQuery['coop']['studies'][number];

/** What was run, when, on what; whether it still holds; run again. */
export function StudyList({ studies }: { studies: readonly Study[] }) {
  return (
    <section>
      <h2>Studies</h2>
      <p className="caption">
        A study counts as out of date only when something it really read has changed: a price record or a station that nobody uses does not
        touch it.
      </p>
      <div className="scroll" role="region" aria-label="studies, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <caption className="hidden">studies</caption>
          <thead>
            <tr>
              <th scope="col">study</th>
              <th scope="col">state</th>
              <th scope="col" className="n">
                houses
              </th>
              <th scope="col" className="n">
                options
              </th>
              <th scope="col" className="n">
                futures
              </th>
              <th scope="col" className="n">
                seconds
              </th>
              <th scope="col">checksums</th>
              <th scope="col">changed since</th>
              <th scope="col">reproduce</th>
            </tr>
          </thead>
          <tbody>
            {studies.map((s) => (
              <tr key={s.id}>
                <td>
                  <b>Study {s.number}</b>
                  <span className="second">
                    {s.askedAt.slice(0, 16).replace('T', ' ')}, by {s.askedBy}
                  </span>
                </td>
                <td>
                  {s.state}
                  {s.failure ? `: ${s.failure}` : ''}
                  {s.normalsOnly.map((w) => (
                    <span key={w} className="second">
                      {w}
                    </span>
                  ))}
                </td>
                <td className="n" data-name="houses">
                  {s.houseCount || ''}
                </td>
                <td className="n" data-name="options">
                  {s.optionCount || ''}
                </td>
                <td className="n" data-name="futures">
                  {s.futuresCount ? s.futuresCount.toLocaleString('en-US') : ''}
                </td>
                <td className="n" data-name="seconds">
                  {s.seconds?.toFixed(1) ?? ''}
                </td>
                <td className="small quiet" data-name="checksums:">
                  inputs {s.inputSha256.slice(0, 8)}
                  {s.futuresSha256 ? `, futures ${s.futuresSha256.slice(0, 8)}` : ''}
                  {s.resultSha256 ? `, result ${s.resultSha256.slice(0, 8)}` : ''}; program {s.programVersion}
                </td>
                <td className="small note">
                  {s.state !== 'done' ? '' : s.changedSince.length === 0 ? 'nothing it read' : s.changedSince.slice(0, 3).join(', ')}
                  {s.changedSince.length > 3 ? ` and ${String(s.changedSince.length - 3)} more` : ''}
                </td>
                <td className="note">{s.state === 'done' && <RunStudyAgain study={s} />}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
