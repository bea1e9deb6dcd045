import type { AwardQuery, AwardsQuery } from '../../lib/graphql/generated/graphql.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

export const Awards = graphql(`
  query Awards {
    coop {
      delivered {
        awards
        verifiedAwards
        share
        low
        high
        promisedKwh
        verifiedKwh
      }
      awards {
        id
        round
        roundId
        isEntered
        farm
        house
        title
        grantCapUsd
        payableUsd
        paidUsd
        freedUsd
        awardedOn
        state
        returnedOn
        returnedReason
        promisedKwh
        overdue {
          kind
          dueOn
          daysLate
          mayReturn
        }
        verified {
          share
          low
          high
          season
        }
      }
    }
  }
`);

export const Award = graphql(`
  query Award($id: ID!) {
    coop {
      name
      isDemo
    }
    award(id: $id) {
      id
      revision
      round
      roundId
      isEntered
      promisedLowKwh
      promisedHighKwh
      decisionNumber
      studyNumber
      farm
      farmId
      house
      houseId
      optionId
      title
      fuel
      grantCapUsd
      grantShare
      outlayUsd
      invoicedUsd
      payableUsd
      paidUsd
      freedUsd
      bridgeUsd
      obligationYears
      awardedOn
      state
      conditions
      returnedOn
      returnedReason
      promisedKwh
      savingUsd {
        p10
        p50
        p90
      }
      milestones {
        kind
        dueOn
        doneOn
        evidence
      }
      overdue {
        kind
        dueOn
        daysLate
        mayReturn
      }
      verified {
        by
        share
        low
        high
        season
        words
      }
    }
  }
`);

export const SaveAward = graphql(`
  mutation SaveAward($input: SaveAwardInput!) {
    saveAward(input: $input) {
      ...Saved
    }
  }
`);

export const VerifyAward = graphql(`
  mutation VerifyAward($id: ID!, $revision: Int!, $requestId: ID!) {
    verifyAward(id: $id, expectedRevision: $revision, requestId: $requestId) {
      ...Saved
    }
  }
`);

export type AwardsCoop = AwardsQuery['coop'];
export type Listed = AwardsCoop['awards'][number];
export type Awarded = NonNullable<AwardQuery['award']>;

export const stepWords = {
  ACCEPTED: 'accepted',
  ORDERED: 'ordered',
  INSTALLED: 'installed',
  INSPECTED: 'inspected',
  INVOICED: 'invoices and proof of payment in',
  PAID: 'grant paid',
  REPORTED: 'bills of the first season reported',
} as const;
