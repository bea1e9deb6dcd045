import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { useFinder } from './finder.ts';

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

/** Adds one farm after another of a co-op of any size: typing part of the name or place shortens the list; Enter takes the first that fits. */
export function FarmFinder({ label, none, others = [], whose = '', choose }: Props) {
  const {
    list,
    typed,
    type,
    onEnter,
    none: nothing,
    more,
  } = useFinder('found-farms', async (text) => (await ask(Found, { text })).coop.farms);
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
        <input type="search" value={typed} onChange={(e) => type(e.target.value)} onKeyDown={onEnter((f) => take(f.id))} />
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
          {nothing && 'No farm has that in its name or place.'}
          {more}
        </span>
      </div>
    </>
  );
}
