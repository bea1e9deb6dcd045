import { graphql } from '../../lib/graphql/generated/index.ts';
import type { LoanBookQuery } from '../../lib/graphql/generated/graphql.ts';

export const LoanBookDocument = graphql(`
  query LoanBook($ids: [ID!]) {
    coop {
      loanCases {
        id
        name
        farm {
          name
        }
        terms {
          state
          amountUsd
        }
      }
    }
    loanBook(caseIds: $ids) {
      amountUsd
      addedP99Usd
      lossesToUsd
      lossCounts
      futuresCount
      drawn {
        ...BookParts
      }
      cases {
        expectedUsd
        defaultShare
        loanCase {
          id
          name
          farm {
            name
          }
          terms {
            amountUsd
            state
          }
        }
      }
      byFuel {
        ...ShareParts
      }
      byPlace {
        ...ShareParts
      }
      byRetrofit {
        ...ShareParts
      }
      leftOut {
        caseId
        name
        message
        remedy
      }
    }
  }
`);

graphql(`
  fragment BookParts on BookLosses {
    meanUsd
    p95Usd
    p95HalfWidth
    p99Usd
    p99HalfWidth
    noLossShare
    missTogetherMiddle
    missTogetherOneInTen
  }
`);

graphql(`
  fragment ShareParts on BookShare {
    name
    cases
    amountUsd
    expectedUsd
    tailUsd
  }
`);

export const BookStressDocument = graphql(`
  query LoanBookStresses($ids: [ID!]) {
    cheap: loanBookStress(kind: CHEAP_AND_MILD, caseIds: $ids) {
      ...BookParts
    }
    dear: loanBookStress(kind: DEAR_AND_HARD, caseIds: $ids) {
      ...BookParts
    }
  }
`);

export type Book = NonNullable<LoanBookQuery['loanBook']>;
