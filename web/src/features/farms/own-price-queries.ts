import { graphql } from '../../lib/graphql/generated/index.ts';

export const OwnPrice = graphql(`
  query OwnPrice($id: ID!) {
    supplyGroup(id: $id) {
      id
      ownPrice {
        unit
        indexName
        tickets
        winters
        withoutIndex
        sameMonth {
          count
          adderUsdPerUnit
          indexShare
          sdUsdPerUnit
          indexShareSe
          r2
        }
        monthBefore {
          count
          adderUsdPerUnit
          indexShare
          sdUsdPerUnit
          indexShareSe
          r2
        }
        meanOverUsdPerUnit
        meanOverSdUsdPerUnit
        adderUsdPerUnit
        indexShare
        scatterUsdPerUnit
        verdict
        faults {
          message
          remedy
        }
        points {
          month
          usdPerUnit
          indexUsdPerUnit
        }
      }
    }
  }
`);
