import { graphql } from '../../lib/graphql/generated/index.ts';

export const FarmFuels = graphql(`
  query FarmFuels {
    coop {
      farmChoices {
        id
        fuel
      }
    }
  }
`);

export const FuelQuery = graphql(`
  query Fuel($fuel: FuelKind!) {
    priceFan(fuel: $fuel, seasons: 5) {
      unit
      months
      p10
      p25
      p50
      p75
      p90
      words
    }
    deliveredHistory(fuel: $fuel) {
      month
      usdPerUnit
    }
    coop {
      scenarioSet {
        priceCase {
          title
          seasonName
        }
      }
      farmChoices {
        id
        name
      }
      priceSeries {
        id
        name
        fuel
        unit
        source
        lastMonth
        inUse
        findings {
          code
          words
        }
      }
    }
  }
`);

export const ExposureQuery = graphql(`
  query Exposure($farmId: ID!, $season: Int!, $cashUsd: Float) {
    farm(id: $farmId) {
      houses {
        dataGrade
      }
      bills {
        usd {
          p10
          p50
          p90
        }
      }
    }
    exposure(farmId: $farmId, season: $season, cashUsd: $cashUsd) {
      heatingValues
      name
      season
      fuel
      heatKwh {
        p50
        p95
      }
      fairFixedUsdPerUnit
      ways {
        key
        name
        fuel
        unit
        isOwn
        isReckoned
        costUsd {
          mean
          p5
          p25
          p50
          p75
          p90
          p95
        }
        usdPerMmbtu
        units
        lessUsd
        breakEvenUsdPerUnit
        heaterUsd
        leftoverUsd
        minimumUsd
      }
      priceShare
      winterShare
      bothShare
      dear {
        usd
        because
        winterName
        heatAgainstMiddlePct
        priceAgainstMiddlePct
      }
      cash {
        cashUsd
        overShare
        meanShortUsd
        shortOneInTwentyUsd
      }
      options {
        key
        title
        houses
        costUsd {
          mean
          p95
        }
        meanOffUsd
        tailOffUsd
        yearlyUsd
        breakEvenUsdPerUnit
      }
      leftOut
    }
  }
`);

export const FuelHistory = graphql(`
  query FuelHistory {
    heatCostHistory {
      year
      months
      gasUsdPerMmbtu
      propaneUsdPerMmbtu
      oilUsdPerMmbtu
      propaneOverGas
      oilOverGas
    }
    jointExposure {
      meanUsd
      p95Usd
      partsOverMeanUsd
      overMeanUsd
      spreadingGivesUsd
      fuels {
        fuel
        houses
        meanUsd
        p95Usd
      }
    }
  }
`);

export const UsePrices = graphql(`
  mutation UsePrices($id: ID!, $requestId: ID!) {
    usePrices(seriesId: $id, requestId: $requestId) {
      ...Saved
    }
  }
`);
