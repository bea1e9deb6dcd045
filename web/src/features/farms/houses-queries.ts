import { graphql } from '../../lib/graphql/generated/index.ts';

export const Houses = graphql(`
  query Houses($filter: HouseFilterInput, $after: String) {
    coop {
      houses(filter: $filter, first: 50, after: $after) {
        total
        next
        items {
          id
          name
          shape
          widthM
          lengthM
          bays
          covering
          heatingPlanCode
          ownPeriods {
            fromMonth
            fromDay
            toMonth
            toDay
          }
          filmDueYear
          fuel
          dataGrade
          farm {
            id
            name
          }
        }
      }
    }
  }
`);

export const ChangeHouses = graphql(`
  mutation ChangeHouses($input: ChangeHousesInput!) {
    changeHouses(input: $input) {
      ...Saved
    }
  }
`);
