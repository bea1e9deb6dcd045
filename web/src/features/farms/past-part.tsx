import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Field } from '../../components/forms/field.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { PastLines } from './past-lines.tsx';
import { Past } from './past-queries.ts';
import { PastTable } from './past-table.tsx';
import { answer, INDEX, price, typedIndex } from './past-words.ts';

/** What a past season would have cost under each contract, by month and to the cent. */
export function PastPart({ supplyId }: { supplyId: string }) {
  const [season, setSeason] = useState<number | null>(null);
  const [typing, setTyping] = useState(false);
  const [typed, setTyped] = useState<string[]>(Array.from({ length: 12 }, () => ''));
  const index = typedIndex(typed);
  const { data, error } = useQuery({
    queryKey: ['past', supplyId, season, index],
    queryFn: () => ask(Past, { id: supplyId, season, index: index ?? null }),
    placeholderData: (d) => d,
  });
  if (error) return <p className="fault">{error.message}</p>;
  const past = data?.supplyGroup?.pastSeason;
  if (!past) return null;
  return (
    <section aria-label="a past season">
      <h2>What a past winter would have cost</h2>
      <p>{answer(past)}</p>
      <div className="form">
        <label>
          <span>season</span>
          <select value={past.season} onChange={(e) => setSeason(Number(e.target.value))}>
            {past.seasons.map((s) => (
              <option key={s} value={s}>
                {s}-{String((s + 1) % 100).padStart(2, '0')}
              </option>
            ))}
          </select>
        </label>
      </div>
      <PastTable past={past} />
      <p className="caption">
        Bought: tickets in the month of their date. {past.notes.join(' ')} Index: {past.indexName}, delivered. Each season stands alone, and
        a contract is moved to it by whole years. Volumes to 0.1 {past.unit}, prices to $0.0001, every line to the cent, halves up.{' '}
        <button className="link" aria-expanded={typing} onClick={() => setTyping(!typing)}>
          {typing ? 'fold the prices' : 'type what the index was'}
        </button>
      </p>
      {typing && (
        <fieldset className="form">
          <legend>Index, $ a {past.unit} delivered; empty takes the record</legend>
          {past.months.map((m, no) => (
            <Field
              key={m.month}
              label={m.month}
              value={typed[no] ?? ''}
              change={(v) => setTyped(typed.map((t, i) => (i === no ? v : t)))}
              name={m.month}
              faults={[]}
              hint={m.indexUsdPerUnit == null ? 'not on record' : `record: ${price(m.indexUsdPerUnit)}`}
              number={INDEX}
            />
          ))}
        </fieldset>
      )}
      {past.ways.map((w) => (
        <PastLines key={w.key} way={w} unit={past.unit} />
      ))}
    </section>
  );
}
