import type { FundingRoundQuery } from '../../lib/graphql/generated/graphql.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

export const Rounds = graphql(`
  query Rounds {
    coop {
      brokenDecision
      fundingRounds {
        id
        name
        state
        changedAt
        rules {
          budgetUsd
        }
        plan {
          decidedOn
          studyNumber
          grantUsd
          availableUsd
          sums {
            savingUsd {
              p10
              p50
              p90
            }
          }
          rows {
            funded
          }
        }
        decisions {
          number
        }
      }
    }
  }
`);

export const RoundComparison = graphql(`
  query RoundComparison($left: ID!, $right: ID!) {
    roundComparison(left: $left, right: $right) {
      left {
        name
        plan {
          grantUsd
          sums {
            savingUsd {
              p10
              p50
              p90
            }
          }
        }
      }
      right {
        name
        plan {
          grantUsd
          sums {
            savingUsd {
              p10
              p50
              p90
            }
          }
        }
      }
      rules {
        title
        left
        right
      }
      grants {
        name
        leftUsd
        rightUsd
      }
      sameGrants
    }
  }
`);

export const FundingRound = graphql(`
  query FundingRound($id: ID!) {
    fundingRound(id: $id) {
      id
      revision
      name
      state
      changedAt
      rulesSetOn
      reserveUntilOn
      groupsUntilOn
      waitingUntilOn
      lookBackYears
      obligationYears
      quorum
      freeUsd
      nextInLine
      canFundNext
      rules {
        budgetUsd
        availableUsd
        reserveShare
        costShare
        houseCapUsd
        farmCapUsd
        publicShare
        minimumGrantUsd
        partialShare
        paybackSeasons
        confidence
        merit
        gradeC
        retrofitCodes
        memberByOn
        tests
        groupMoneyHeld
        lotSeed
        groups {
          name
          minimumShare
          costShare
        }
        pinned {
          houseId
          optionKey
          reason
        }
        excluded {
          houseId
          optionKey
          reason
        }
        amounts {
          houseId
          optionKey
          grantUsd
          reason
        }
      }
      committee {
        key
        name
        present
        vote
        interests {
          farmId
          farm
          relation
        }
      }
      applications {
        houseId
        farm
        house
        completeOn
        otherGrantsUsd
        shown {
          test
          passed
          evidence
          on
        }
      }
      obstacles {
        message
        remedy
      }
      decisions {
        id
        number
        kind
        decidedOn
        writtenAt
        bodySha256
        previousSha256
        correctsNumber
        reason
        studyNumber
        body
      }
      awards {
        id
        houseId
        state
        grantCapUsd
      }
      plan {
        kind
        decidedOn
        studyNumber
        studyResultSha256
        futures
        availableUsd
        grantUsd
        outlayUsd
        sums {
          worstTenthUsd
          heatSavedKwh
          co2SavedKg
          nextAddsUsd
          lastBoughtUsd
          groupsCostUsd
          heldUsd
          savingUsd {
            p10
            p50
            p90
          }
        }
        groups {
          name
          minimumShare
          askedUsd
          askedHouses
          eligibleUsd
          eligibleHouses
          fundedUsd
          fundedHouses
        }
        overrides {
          what
          name
          reason
          losesUsd
          losesShare
          ballot {
            for
            against
            recused
          }
        }
        measures {
          merit
          savingUsd
          enter
          leave
        }
        switches {
          what
          at
          name
        }
        earlier {
          round
          awards
          returnedUsd
          delivered {
            awards
            verifiedAwards
            share
            low
            high
          }
        }
        out {
          optionId
          farm
          house
          title
          why
          rule
        }
        rows {
          rank
          optionId
          houseId
          optionKey
          farm
          house
          title
          funded
          pinned
          grantUsd
          askedUsd
          outlayUsd
          eligibleUsd
          ownPartUsd
          grade
          fundedShare
          conditions
          why
          savingUsd {
            p10
            p50
            p90
          }
          payback {
            p10
            p25
            p50
            p75
            p90
            neverShare
          }
          ballot {
            recused
          }
        }
      }
    }
  }
`);

export const SaveRound = graphql(`
  mutation SaveRound($input: SaveRoundInput!) {
    saveRound(input: $input) {
      roundId
      ...RoundSaved
    }
  }
  fragment RoundSaved on RoundPayload {
    changeId
    conflict
    faults {
      field
      message
      remedy
    }
  }
`);

export const CloseRound = graphql(`
  mutation CloseRound($id: ID!, $revision: Int!, $requestId: ID!) {
    closeRound(id: $id, expectedRevision: $revision, requestId: $requestId) {
      ...RoundSaved
    }
  }
`);

export const CorrectDecision = graphql(`
  mutation CorrectDecision($input: CorrectDecisionInput!) {
    correctDecision(input: $input) {
      ...RoundSaved
    }
  }
`);

export const FundNext = graphql(`
  mutation FundNext($roundId: ID!, $requestId: ID!) {
    fundNext(roundId: $roundId, requestId: $requestId) {
      ...RoundSaved
    }
  }
`);

export const DeleteRound = graphql(`
  mutation DeleteRound($id: ID!, $revision: Int!, $requestId: ID!) {
    deleteItem(id: $id, expectedRevision: $revision, requestId: $requestId) {
      ...Saved
    }
  }
`);

export type Round = NonNullable<FundingRoundQuery['fundingRound']>;
export type Plan = NonNullable<Round['plan']>;
export type PlanRow = Plan['rows'][number];
