import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { type FieldFault, FaultList } from './fault-list.tsx';
import { useFinder } from './finder.ts';
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

/** A house of a co-op of any size: typing part of its farm's or its own name shortens the list; Enter takes the first that fits. */
export function HouseFinder({ label, value, change, name, faults = [] }: Props) {
  const { list, typed, type, onEnter, none, more } = useFinder('found-houses', async (text) => (await ask(Found, { text })).coop.houses);
  const isListed = list.some((h) => h.id === value);
  const chosen = useHouseName(isListed ? undefined : value);
  return (
    <>
      <label>
        <span>find a {label.startsWith('house') ? 'house' : `house (${label})`} by farm or name</span>
        <input type="search" value={typed} onChange={(e) => type(e.target.value)} onKeyDown={onEnter((h) => change(h.id))} />
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
          {none && 'No house has that in its name.'}
          {more}
        </span>
        <FaultList faults={faults.filter((f) => f.field === name)} />
      </div>
    </>
  );
}
