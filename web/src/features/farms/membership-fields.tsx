import { useId } from 'react';
import { type FieldFault, FaultList } from '../../components/forms/fault-list.tsx';
import { Field } from '../../components/forms/field.tsx';
import type { MembershipInput } from '../../lib/graphql/generated/graphql.ts';

export interface MembershipTyped {
  key: string;
  since: string;
  groups: string;
}

interface Known {
  relatedKey?: string | null;
  memberSinceOn?: string | null;
  groups: readonly string[];
}

export const membershipTyped = (farm: Known): MembershipTyped => ({
  key: farm.relatedKey ?? '',
  since: farm.memberSinceOn ?? '',
  groups: farm.groups.join('; '),
});

/** What the server takes; a name of a group may have a comma in it, so a semicolon parts them. */
export const membershipInput = (typed: MembershipTyped): MembershipInput => ({
  relatedKey: typed.key.trim() || null,
  memberSinceOn: typed.since || null,
  groups: typed.groups
    .split(';')
    .map((g) => g.trim())
    .filter((g) => g !== ''),
});

interface Props {
  typed: MembershipTyped;
  set: (typed: MembershipTyped) => void;
  /** Words in use for farms under one owner. */
  keys: readonly string[];
  /** Groups that rounds name or other farms belong to. */
  groups: readonly string[];
  faults: FieldFault[];
}

/** What the rules of a round ask of a farm. */
export function MembershipFields({ typed, set, keys, groups, faults }: Props) {
  const list = useId();
  const put = (part: Partial<MembershipTyped>) => set({ ...typed, ...part });
  const chosen = membershipInput(typed).groups ?? [];
  const left = groups.filter((g) => !chosen.some((c) => c.toLowerCase() === g.toLowerCase()));
  return (
    <>
      <div className="field">
        <label>
          <span>farms under one owner: a word that they share (empty: stands alone)</span>
          <input list={list} value={typed.key} onChange={(e) => put({ key: e.target.value })} aria-describedby={`${list}-hint`} />
        </label>
        <span id={`${list}-hint`} className="small quiet">
          Give each of them the same word, any one, rather not a person’s name. Caps of a round then count them as one farm.
        </span>
        <datalist id={list}>
          {keys.map((k) => (
            <option key={k} value={k} />
          ))}
        </datalist>
        <FaultList faults={faults.filter((f) => f.field === 'relatedKey')} />
      </div>
      <Field
        label="member since (empty: not told)"
        type="date"
        value={typed.since}
        change={(since) => put({ since })}
        name="memberSinceOn"
        faults={faults}
        hint="A round for members by a certain day goes by it."
      />
      <div>
        <Field
          label="groups it belongs to, with a semicolon between"
          value={typed.groups}
          change={(g) => put({ groups: g })}
          name="groups"
          faults={faults}
          hint="By the words that the round names them with; a round may keep money for a group."
        />
        {left.map((g) => (
          <button key={g} className="link small" type="button" onClick={() => put({ groups: [...chosen, g].join('; ') })}>
            add “{g}”
          </button>
        ))}
      </div>
    </>
  );
}
