import { useQuery } from '@tanstack/react-query';
import { useSearchParams } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import { ComparedOptions } from './compared-options.tsx';
import { InputDifferences } from './input-differences.tsx';
import type { Study } from './study-list.tsx';
import { Comparison as ComparisonQuery } from './study-queries.ts';
import { dollars } from '../../lib/units/format.ts';

/** Two studies side by side: what differs in the inputs, and what that did to the results. The address keeps the choice. */
export function Comparison({ studies }: { studies: readonly Study[] }) {
  const [params, setParams] = useSearchParams();
  const done = studies.filter((s) => s.state === 'done');
  const left = params.get('left') ?? done[1]?.id ?? '';
  const right = params.get('right') ?? done[0]?.id ?? '';
  const { data, error } = useQuery({
    queryKey: ['comparison', left, right],
    queryFn: () => ask(ComparisonQuery, { left, right }),
    enabled: done.length > 1,
  });
  if (done.length < 2) {
    return (
      <section>
        <h2>Two studies side by side</h2>
        <p className="caption">
          {done.length === 0 ? 'No study is done yet. Run one, change something,' : 'There is one study so far. Change something,'} run the
          next, and both stand here with what differs.
        </p>
      </section>
    );
  }
  const choose = (side: 'left' | 'right', value: string) => {
    const next = new URLSearchParams(params);
    next.set(side, value);
    setParams(next, { replace: true });
  };
  const pick = (side: 'left' | 'right', value: string) => (
    <label>
      <span>{side === 'left' ? 'this study' : 'beside this one'}</span>
      <select value={value} onChange={(e) => choose(side, e.target.value)}>
        {done.map((s) => (
          <option key={s.id} value={s.id}>
            study {s.number} of {s.askedAt.slice(0, 10)}
          </option>
        ))}
      </select>
    </label>
  );
  const c = data?.studyComparison;
  const [a, b] = [c?.left.costUsdBySeason[0], c?.right.costUsdBySeason[0]];
  return (
    <section>
      <h2>Two studies side by side</h2>
      <div className="form">
        {pick('left', left)}
        {pick('right', right)}
      </div>
      {error && <p className="fault">{error.message}</p>}
      {c && a && b && (
        <>
          <p className="lead">
            A middling first season costs <b>{dollars(a.p50)}</b> in study {c.left.number} and <b>{dollars(b.p50)}</b> in study{' '}
            {c.right.number}; one in ten costs over {dollars(a.p90)} and {dollars(b.p90)}.{' '}
            {c.left.futuresSha256 === c.right.futuresSha256
              ? 'Both met the same futures, so every difference comes from the inputs below.'
              : 'They met different futures.'}
          </p>
          <InputDifferences inputs={c.inputs} left={c.left.number} right={c.right.number} />
          <ComparedOptions options={c.options} same={c.sameOptions} left={c.left.number} right={c.right.number} />
        </>
      )}
    </section>
  );
}
