import type { EnteredRoundQuery } from '../../lib/graphql/generated/graphql.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

export const EnteredRound = graphql(`
  query EnteredRound($id: ID!) {
    coop {
      realisedFactors {
        retrofitCode
        retrofitTitle
      }
    }
    fundingRound(id: $id) {
      id
      revision
      name
      state
      enteredDecidedOn
      rulesInShort
      rules {
        budgetUsd
      }
      awards {
        id
        revision
        farm
        house
        houseId
        title
        parts
        state
        grantCapUsd
        outlayUsd
        paidUsd
        promisedKwh
        promisedLowKwh
        promisedHighKwh
        verified {
          share
          low
          high
        }
      }
    }
  }
`);

export const SaveEnteredRound = graphql(`
  mutation SaveEnteredRound($input: EnteredRoundInput!) {
    saveEnteredRound(input: $input) {
      roundId
      ...RoundSaved
    }
  }
`);

export const DeleteEnteredRound = graphql(`
  mutation DeleteEnteredRound($id: ID!, $revision: Int!, $requestId: ID!) {
    deleteEnteredRound(id: $id, expectedRevision: $revision, requestId: $requestId) {
      ...RoundSaved
    }
  }
`);

export type Entered = NonNullable<EnteredRoundQuery['fundingRound']>;
export type EnteredAward = Entered['awards'][number];
export type Works = EnteredRoundQuery['coop']['realisedFactors'];
