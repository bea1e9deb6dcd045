import { graphql } from '../../lib/graphql/generated/index.ts';

export const Studies = graphql(`
  query Studies($before: Int) {
    coop {
      studyTotal
      studies(first: 20, beforeNumber: $before) {
        id
        number
        state
        askedBy
        askedAt
        seconds
        houseCount
        optionCount
        futuresCount
        inputSha256
        resultSha256
        futuresSha256
        programVersion
        failure
        changedSince
        normalsOnly
        canRunAgain
        newestRunAgain {
          id
          state
          askedAt
          seconds
          same
          storedSha256
          againSha256
          firstDifference
          failure
        }
      }
      changes(first: 30) {
        id
        seq
        at
        said
        isUndo
        itemCount
      }
    }
  }
`);

export const Undo = graphql(`
  mutation Undo($id: ID!, $requestId: ID!) {
    undo(changeId: $id, requestId: $requestId) {
      changeId
      faults {
        message
        remedy
      }
    }
  }
`);

export const RunAgain = graphql(`
  mutation RunAgain($id: ID!) {
    runStudyAgain(studyId: $id) {
      id
      state
    }
  }
`);

export const CancelRunAgain = graphql(`
  mutation CancelRunAgain($id: ID!) {
    cancelRunAgain(runId: $id) {
      id
      state
    }
  }
`);

export const FollowRunAgain = graphql(`
  subscription RunAgainProgress($id: ID!) {
    runAgainProgress(runId: $id) {
      state
      share
      words
    }
  }
`);

export const Comparison = graphql(`
  query Comparison($left: ID!, $right: ID!) {
    studyComparison(left: $left, right: $right) {
      left {
        ...Side
      }
      right {
        ...Side
      }
      inputs {
        itemId
        kind
        name
        state
        fields {
          title
          left
          right
        }
      }
      sameOptions
      options {
        optionId
        house
        title
        left {
          ...OptionSide
        }
        right {
          ...OptionSide
        }
      }
    }
  }
  fragment Side on Study {
    id
    number
    askedAt
    houseCount
    optionCount
    futuresSha256
    costUsdBySeason {
      p10
      p50
      p90
    }
  }
  fragment OptionSide on OptionResult {
    savingUsd {
      p50
    }
    npvUsd {
      p50
    }
    lastingPayback {
      p50Season
      neverShare
    }
  }
`);
