import { useQuery } from '@tanstack/react-query';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

const Named = graphql(`
  query NamedHouse($id: ID!) {
    house(id: $id) {
      id
      name
      farm {
        name
      }
    }
  }
`);

/** Farm and house of an identifier; undefined until it is read, or where there is none. */
export function useHouseName(houseId: string | undefined): string | undefined {
  const named = useQuery({
    queryKey: ['named-house', houseId],
    queryFn: () => ask(Named, { id: houseId ?? '' }),
    enabled: houseId !== undefined && houseId !== '',
  });
  const house = named.data?.house;
  return house ? `${house.farm.name}, ${house.name}` : undefined;
}
