import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

const Found = graphql(`
  query FoundFarms($text: String) {
    coop {
      farms(first: 50, text: $text) {
        total
        items {
          id
          name
        }
      }
    }
  }
`);

interface Props {
  /** What the choice is for, such as "interest in". */
  label: string;
  /** Words of the empty choice. */
  none: string;
  /** What may be chosen beside farms, by its value. */
  others?: readonly (readonly [value: string, label: string])[];
  /** Whose choice it is, where a page has several; read out, not shown. */
  whose?: string;
  /** Told what was chosen: a farm's identifier and name, or one of the others. */
  choose: (value: string, name: string) => void;
}

const PAUSE_MS = 250;

/** Adds one farm after another of a co-op of any size: typing part of the name or place shortens the list; Enter takes the first that fits. */
export function FarmFinder({ label, none, others = [], whose = '', choose }: Props) {
  const [typed, type] = useState('');
  const [text, look] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => look(typed.trim()), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [typed]);
  const found = useQuery({
    queryKey: ['found-farms', text],
    queryFn: () => ask(Found, { text: text || null }),
    placeholderData: (d) => d,
  });
  const list = found.data?.coop.farms.items ?? [];
  const total = found.data?.coop.farms.total ?? 0;
  const of = whose && <span className="hidden"> of {whose}</span>;
  const take = (value: string) => {
    const name = [...others, ...list.map((f) => [f.id, f.name] as const)].find(([v]) => v === value)?.[1];
    if (name === undefined) return;
    choose(value, name);
    type('');
  };
  return (
    <>
      <label>
        <span>
          find a farm by name or place, {label}
          {of}
        </span>
        <input
          type="search"
          value={typed}
          onChange={(e) => type(e.target.value)}
          onKeyDown={(e) => {
            if (e.key !== 'Enter') return;
            e.preventDefault();
            const first = typed.trim() !== '' && typed.trim() === text && !found.isPlaceholderData ? list[0] : undefined;
            if (first) take(first.id);
          }}
        />
      </label>
      <div>
        <label>
          <span>
            {label}
            {of}
          </span>
          <select value="" onChange={(e) => take(e.target.value)}>
            <option value="">{none}</option>
            {others.map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
            {list.map((f) => (
              <option key={f.id} value={f.id}>
                {f.name}
              </option>
            ))}
          </select>
        </label>
        <span className="small quiet" aria-live="polite">
          {found.data && list.length === 0 && 'No farm has that in its name or place.'}
          {total > list.length && `${String(list.length)} of the ${total.toLocaleString('en-US')} that fit; type more of the name.`}
        </span>
      </div>
    </>
  );
}
