import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { type FieldFault, FaultList } from './fault-list.tsx';
import { useHouseName } from './house-name.ts';

const Found = graphql(`
  query FoundHouses($text: String) {
    coop {
      houses(first: 50, filter: { text: $text }) {
        total
        items {
          id
          name
          farm {
            name
          }
        }
      }
    }
  }
`);

interface Props {
  /** Name of the choice. */
  label: string;
  /** Chosen house; empty = none yet. */
  value: string;
  change: (houseId: string) => void;
  name?: string;
  faults?: readonly FieldFault[];
}

const PAUSE_MS = 250;

/** A house of a co-op of any size: typing part of its farm's or its own name shortens the list; Enter takes the first that fits. */
export function HouseFinder({ label, value, change, name, faults = [] }: Props) {
  const [typed, type] = useState('');
  const [text, look] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => look(typed.trim()), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [typed]);
  const found = useQuery({
    queryKey: ['found-houses', text],
    queryFn: () => ask(Found, { text: text || null }),
    placeholderData: (d) => d,
  });
  const list = found.data?.coop.houses.items ?? [];
  const isListed = list.some((h) => h.id === value);
  const chosen = useHouseName(isListed ? undefined : value);
  const total = found.data?.coop.houses.total ?? 0;
  return (
    <>
      <label>
        <span>find a {label.startsWith('house') ? 'house' : `house (${label})`} by farm or name</span>
        <input
          type="search"
          value={typed}
          onChange={(e) => type(e.target.value)}
          onKeyDown={(e) => {
            if (e.key !== 'Enter') return;
            e.preventDefault();
            const first = typed.trim() === text ? list[0] : undefined;
            if (first) change(first.id);
          }}
        />
      </label>
      <div>
        <label>
          <span>{label}</span>
          <select value={value} onChange={(e) => change(e.target.value)}>
            {value === '' && <option value="">choose a house</option>}
            {value !== '' && !isListed && <option value={value}>{chosen ?? 'the house chosen'}</option>}
            {list.map((h) => (
              <option key={h.id} value={h.id}>
                {h.farm.name}, {h.name}
              </option>
            ))}
          </select>
        </label>
        <span className="small quiet" aria-live="polite">
          {found.data && list.length === 0 && 'No house has that in its name.'}
          {total > list.length && `${String(list.length)} of the ${total.toLocaleString('en-US')} that fit; type more of the name.`}
        </span>
        <FaultList faults={faults.filter((f) => f.field === name)} />
      </div>
    </>
  );
}
