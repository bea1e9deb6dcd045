import { Link } from 'react-router';
import type { FarmQuery } from '../../lib/graphql/generated/graphql.ts';

type Member = Pick<NonNullable<FarmQuery['farm']>, 'name' | 'relatedKey' | 'relatedFarms' | 'memberSinceOn' | 'groups'>;

/** What the rules of a round ask of a farm, each with what it is for. */
export function FarmMembership({ farm }: { farm: Member }) {
  return (
    <section>
      <h2>In a funding round</h2>
      <ul>
        <li>
          <b>Owner.</b>{' '}
          {farm.relatedFarms.length > 0 ? (
            <>
              Under one owner with{' '}
              {farm.relatedFarms.map((f, no) => (
                <span key={f.id}>
                  {no > 0 && (no === farm.relatedFarms.length - 1 ? ' and ' : ', ')}
                  <Link to={`/farms/${f.id}`}>{f.name}</Link>
                </span>
              ))}
              : the cap of a farm holds for all of them together, and an interest in one is an interest in each.
            </>
          ) : farm.relatedKey ? (
            `No other farm has its word “${farm.relatedKey}” yet, so the cap of a farm is its own.`
          ) : (
            'Stands alone: the cap of a farm is its own.'
          )}
        </li>
        <li>
          <b>Member since.</b>{' '}
          {farm.memberSinceOn
            ? `${farm.memberSinceOn}: a round for members by a certain day goes by it.`
            : 'Not told: a round for members by a certain day leaves this farm out until it is.'}
        </li>
        <li>
          <b>Groups.</b>{' '}
          {farm.groups.length > 0
            ? `${farm.groups.join('; ')}: a round that names a group may keep a share of its money for it, or pay it a larger part of the cost.`
            : 'None: what a round keeps for a group, or pays it above the others, does not reach this farm.'}
        </li>
      </ul>
    </section>
  );
}
