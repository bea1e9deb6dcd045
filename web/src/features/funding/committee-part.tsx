import { useState } from 'react';
import { FarmFinder } from '../../components/forms/farm-finder.tsx';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { Vote } from '../../lib/graphql/generated/graphql.ts';
import { useAct } from './act-hook.ts';
import { type Round, SaveRound } from './round-query.ts';

const votes: Record<Vote, string> = { NONE: 'did not vote', FOR: 'for', AGAINST: 'against', ABSTAINED: 'abstained' };
const SUPPLIER = 'a supplier';
const relations = ['owner', 'kin', 'employer', 'creditor', 'seller of the work', 'paid adviser'];

/** Who decided: present, votes, interests declared; a member with an interest in a farm leaves the room for it. */
export function CommitteePart({ round }: { round: Round }) {
  const [editing, edit] = useState(false);
  return (
    <section>
      <h2>Committee</h2>
      <p className="caption">
        Every item needs {round.quorum} members present who declared no interest in its farm, and more votes for than against among them.
      </p>
      {round.committee.length === 0 && !editing && (
        <p>{round.state === 'OPEN' ? 'Nobody is entered yet.' : 'Who decided is not on record.'}</p>
      )}
      {editing ? (
        <CommitteeForm round={round} close={() => edit(false)} />
      ) : (
        <>
          <ul>
            {round.committee.map((m) => (
              <li key={m.key}>
                <b>{m.name}</b>: {m.present ? votes[m.vote] : 'absent'}
                {m.interests.map((i) => `; ${i.relation}${i.farm ? ` of ${i.farm}` : ''}`).join('')}
              </li>
            ))}
          </ul>
          {round.state === 'OPEN' && (
            <button className="link" onClick={() => edit(true)}>
              enter who decides, interests and votes
            </button>
          )}
        </>
      )}
    </section>
  );
}

interface Typed {
  name: string;
  present: boolean;
  vote: Vote;
  interests: { farmId: string | null; farm: string; relation: string }[];
}

function CommitteeForm({ round, close }: { round: Round; close: () => void }) {
  const all = useTyped<{ members: Typed[]; quorum: string }>(() => ({
    members: round.committee.map((m) => ({
      ...m,
      interests: m.interests.map((i) => ({ farmId: i.farmId ?? null, farm: i.farm ?? SUPPLIER, relation: i.relation })),
    })),
    quorum: String(round.quorum),
  }));
  const { members, quorum } = all.typed;
  const set = (next: Typed[]) => all.set({ ...all.typed, members: next });
  const setQuorum = (next: string) => all.set({ ...all.typed, quorum: next });
  const put = (at: number, part: Partial<Typed>) => set(members.map((m, i) => (i === at ? { ...m, ...part } : m)));
  const save = useAct(
    async () =>
      (
        await ask(SaveRound, {
          input: {
            id: round.id,
            expectedRevision: round.revision,
            requestId: requestId(),
            name: round.name,
            quorum: Number(quorum),
            committee: members.map(({ name, present, vote, interests }) => ({
              name,
              present,
              vote,
              interests: interests.map(({ farmId, relation }) => ({ farmId, relation })),
            })),
          },
        })
      ).saveRound,
    close,
    all.changed,
  );
  return (
    <form
      aria-label="committee"
      onSubmit={(e) => {
        e.preventDefault();
        save.run();
      }}
    >
      <label>
        <span>members that every item needs</span>
        <input type="number" min={1} max={50} style={{ maxWidth: 120 }} value={quorum} onChange={(e) => setQuorum(e.target.value)} />
      </label>
      {members.map((m, at) => (
        <fieldset key={at}>
          <legend>member {at + 1}</legend>
          <div className="form">
            <label>
              <span>name, or office</span>
              <input value={m.name} onChange={(e) => put(at, { name: e.target.value })} />
            </label>
            <label>
              <span>present and vote</span>
              <select
                value={m.present ? m.vote : 'absent'}
                onChange={(e) =>
                  put(at, e.target.value === 'absent' ? { present: false, vote: 'NONE' } : { present: true, vote: e.target.value as Vote })
                }
              >
                <option value="absent">absent</option>
                {Object.entries(votes).map(([v, words]) => (
                  <option key={v} value={v}>
                    present, {words}
                  </option>
                ))}
              </select>
            </label>
            <FarmFinder
              label="interest in"
              none={m.interests.length > 0 ? 'add another' : 'none declared'}
              others={[['supplier', SUPPLIER]]}
              whose={m.name || `member ${String(at + 1)}`}
              choose={(value, farm) =>
                put(at, {
                  interests: [...m.interests, { farmId: value === 'supplier' ? null : value, farm, relation: relations[0] ?? '' }],
                })
              }
            />
          </div>
          {m.interests.map((i, no) => (
            <p key={no} className="small">
              {i.farm}, as{' '}
              <input
                aria-label={`relation of ${m.name || `member ${at + 1}`} to ${i.farm}`}
                list="relations"
                value={i.relation}
                onChange={(e) => put(at, { interests: m.interests.map((x, k) => (k === no ? { ...x, relation: e.target.value } : x)) })}
              />{' '}
              <button className="link" type="button" onClick={() => put(at, { interests: m.interests.filter((_, k) => k !== no) })}>
                take away<span className="hidden"> that interest of {m.name || `member ${at + 1}`}</span>
              </button>
              {!i.farmId && (
                <>
                  {' '}
                  It takes nobody out of a vote by itself: which houses the supplier quotes for is not looked up. Declare the farms it would
                  work for as well.
                </>
              )}
            </p>
          ))}
          <button className="link" type="button" onClick={() => set(members.filter((_, i) => i !== at))}>
            not on the committee<span className="hidden">: {m.name || `member ${at + 1}`}</span>
          </button>
        </fieldset>
      ))}
      <datalist id="relations">
        {relations.map((r) => (
          <option key={r} value={r} />
        ))}
      </datalist>
      <p>
        <button className="link" type="button" onClick={() => set([...members, { name: '', present: true, vote: 'FOR', interests: [] }])}>
          add a member
        </button>
      </p>
      <FaultList faults={save.faults} />
      <button className="filled" disabled={save.pending}>
        Save the committee
      </button>{' '}
      <button className="link" type="button" onClick={close}>
        leave it as it was
      </button>
    </form>
  );
}
