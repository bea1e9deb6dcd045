import { graphql } from '../../lib/graphql/generated/index.ts';
import type { OptionQuery as OptionAnswer } from '../../lib/graphql/generated/graphql.ts';

export const OptionQuery = graphql(`
  query Option($id: ID!) {
    option(id: $id) {
      id
      key
      title
      outlayUsd
      outlayBasis
      sparedRenewals {
        season
        usd
      }
      runningUsd
      drawbacks
      cautions
      skills
      ownFigures
      lifeYears
      isRunningChange
      outlay {
        what
        usd
        field
      }
      running {
        what
        usd
        field
        quantity
        unit
      }
      house {
        id
        name
        optionSetRevision
        farm {
          id
          name
        }
      }
      movesTo
      result {
        outlayUsd
        heatSavedShare
        fuelSavedKwh
        newFuel
        newFuelKwh
        lossShare
        notCounted
        onePathUsdBySeason
        startSeason
        savingUsd {
          p10
          p50
          p90
        }
        npvUsd {
          p10
          p50
          p90
        }
        savingsToInvestment {
          p10
          p50
          p90
        }
        rateOfReturn {
          p10
          p50
          p90
        }
        netUsdBySeason {
          p10
          p25
          p50
          p75
          p90
        }
        lastingPayback {
          shareBySeason
          neverShare
          halfWidth
          p50Season
          p90Season
        }
        firstPayback {
          p50Season
          neverShare
        }
        discounted: lastingPayback(discounted: true) {
          p50Season
          neverShare
        }
      }
    }
  }
`);
export const SaveFigure = graphql(`
  mutation SaveOptionFigure($input: OptionFigureInput!) {
    saveOptionFigure(input: $input) {
      ...Saved
    }
  }
`);
export const MovesQuery = graphql(`
  query OptionMoves($id: ID!) {
    option(id: $id) {
      id
      sensitivity {
        base {
          npvUsd
          paybackSeason
          neverShare
        }
        bars {
          field
          title
          low {
            words
            npvUsd
            paybackSeason
            neverShare
          }
          high {
            words
            npvUsd
            paybackSeason
            neverShare
          }
        }
      }
    }
  }
`);

export type Option = NonNullable<OptionAnswer['option']>;
export type Result = NonNullable<Option['result']>;
