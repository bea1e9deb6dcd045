import type { LoanStressesQuery } from '../../lib/graphql/generated/graphql.ts';
import { figure, ofHundred } from '../../lib/units/format.ts';
import { cover, notApplying, stressWords } from './lending-words.ts';
import { NumberHead } from '../../components/number-head.tsx';

type Stress = NonNullable<LoanStressesQuery['loanCase']>['stresses'][number];

/** Each stress in its own direction, both covers beside each other. */
export function LoanStresses({
  stresses,
  error,
  hasFarm,
}: {
  stresses: readonly Stress[] | undefined;
  error: Error | null;
  hasFarm: boolean;
}) {
  return (
    <section>
      <h2>When something goes wrong</h2>
      <p className="caption">
        Of 100 futures: those with some season under 1.0; and the worst season of the term, middle future. Each stress is laid over the same
        futures, in the direction that hurts.
      </p>
      {error && <p className="fault">{error.message}</p>}
      {!stresses && !error && <p className="quiet">Drawing the warmest and the coldest winters.</p>}
      {stresses && (
        <div className="scroll" role="region" aria-label="stresses, scrolls sideways" tabIndex={0}>
          <table className="stresses">
            <thead>
              <tr>
                <th scope="col">stress</th>
                <NumberHead over="savings miss," under="of 100" />
                <NumberHead over="project cover," under="worst season" />
                {hasFarm && (
                  <>
                    <NumberHead over="farm misses," under="of 100" />
                    <NumberHead over="farm cover," under="worst season" />
                  </>
                )}
                <NumberHead over="default," under="of 100" />
                <NumberHead over="expected" under="loss, $" />
              </tr>
            </thead>
            <tbody>
              {stresses.map((s) => {
                const [name, note] = stressWords[s.kind];
                return (
                  <tr key={s.kind}>
                    <td>
                      {name}
                      <span className="second">{s.applies ? note : `does not apply: ${notApplying[s.kind] ?? ''}`}</span>
                    </td>
                    {s.applies ? (
                      <>
                        <td className="n">{ofHundred(s.projectUnderOneShare)}</td>
                        <td className="n">{cover(s.projectWorst)}</td>
                        {hasFarm && (
                          <>
                            <td className="n">{ofHundred(s.farmUnderOneShare ?? 0)}</td>
                            <td className="n">{cover(s.farmWorst ?? 0)}</td>
                          </>
                        )}
                        <td className="n">{ofHundred(s.defaultShare)}</td>
                        <td className="n">{figure(s.lossUsd, 2)}</td>
                      </>
                    ) : (
                      Array.from({ length: hasFarm ? 6 : 4 }, (_, i) => (
                        <td key={i} className="n quiet">
                          –
                        </td>
                      ))
                    )}
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
