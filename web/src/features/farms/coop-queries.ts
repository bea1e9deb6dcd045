import { graphql } from '../../lib/graphql/generated/index.ts';

export const Coops = graphql(`
  query Coops {
    coops {
      id
      name
      isDemo
      isChosen
    }
  }
`);

export const NewCoop = graphql(`
  mutation NewCoop($name: String!, $stationsFrom: ID, $requestId: ID!) {
    newCoop(name: $name, stationsFromCoopId: $stationsFrom, requestId: $requestId) {
      coopId
      faults {
        field
        message
        remedy
      }
    }
  }
`);

export const RenameCoop = graphql(`
  mutation RenameCoop($name: String!) {
    renameCoop(name: $name) {
      coopId
      faults {
        field
        message
        remedy
      }
    }
  }
`);
