import { graphql } from '../../lib/graphql/generated/index.ts';

export const Choices = graphql(`
  query NewHouseChoices {
    coop {
      name
      isDemo
      farmChoices {
        id
        name
      }
      weatherStations {
        id
        markedName
      }
    }
  }
`);

export const NewHouse = graphql(`
  mutation NewHouse($input: NewHouseInput!) {
    newHouse(input: $input) {
      houseId
      changeId
      preview {
        fuel
        seasonName
        fuelKwh
        toldKwhFuel
        fromDefaults {
          field
          title
          source
        }
      }
      faults {
        code
        field
        message
        remedy
      }
    }
  }
`);
