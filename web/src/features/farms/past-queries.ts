import { graphql } from '../../lib/graphql/generated/index.ts';

export const Past = graphql(`
  query Past($id: ID!, $season: Int, $index: [Float]) {
    supplyGroup(id: $id) {
      id
      pastSeason(season: $season, indexUsdPerUnit: $index) {
        ...Past
      }
    }
  }
  fragment Past on PastSeason {
    season
    name
    unit
    indexName
    seasons
    paidUsd
    notes
    months {
      month
      units
      deliveries
      paidUsd
      indexUsdPerUnit
      indexIsTyped
    }
    ways {
      key
      name
      unit
      totalUsd
      monthsUsd
      seasonEndUsd
      stillOwnUnits
      creditUsd
      lines {
        month
        what
        quantity
        usdPerUnit
        usd
      }
      faults {
        field
        message
        remedy
      }
    }
  }
`);
