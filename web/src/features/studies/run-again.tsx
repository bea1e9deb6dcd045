import { useMutation } from '@tanstack/react-query';
import { ask } from '../../lib/graphql/client.ts';
import { RunAgain } from './study-queries.ts';

/** Runs a study again from its frozen inputs and says whether every figure came out the same. */
export function RunStudyAgain({ id, number, seconds }: { id: string; number: number; seconds?: number | null }) {
  const again = useMutation({ mutationFn: () => ask(RunAgain, { id }) });
  const answer = again.data?.runStudyAgain;
  return (
    <>
      <button className="link" disabled={again.isPending} onClick={() => again.mutate()}>
        run again and compare<span className="hidden"> study {number}</span>
      </button>
      <span className="small second" role="status">
        {again.isPending && `running; the first time took ${seconds ? seconds.toFixed(0) : 'some'} s`}
        {again.error && <span className="fault">{again.error.message}</span>}
        {again.data && !answer && 'made by another version of the numbers: it can be read, not run again'}
        {answer?.same && `the same, bit for bit: checksum ${answer.againSha256.slice(0, 12)}, ${answer.seconds.toFixed(1)} s`}
        {answer && !answer.same && (
          <span className="fault">
            not the same: {answer.storedSha256.slice(0, 12)} stored, {answer.againSha256.slice(0, 12)} now; first {answer.firstDifference}
          </span>
        )}
      </span>
    </>
  );
}
