import { graphql } from '../../lib/graphql/generated/index.ts';

export const PricesQuery = graphql(`
  query Prices($firstSeason: Int) {
    coop {
      scenarioSet {
        id
        revision
        firstSeason
        seasonCount
        levelMeaning
        priceCase {
          kind
          firstSeason
        }
      }
      priceCases(firstSeason: $firstSeason) {
        kind
        title
        words
        source
        inUse
        factors {
          fuel
          bySeason
        }
      }
      houses(first: 1) {
        items {
          id
        }
      }
    }
  }
`);

export const HouseOptions = graphql(`
  query HouseOptions($id: ID!) {
    house(id: $id) {
      id
      name
      fuel
      farm {
        name
      }
      options {
        id
        key
        title
      }
    }
  }
`);

export const CaseEffects = graphql(`
  query CaseEffects($id: ID!, $firstSeason: Int!) {
    option(id: $id) {
      id
      priceCaseEffects(firstSeason: $firstSeason) {
        base {
          npvUsd
          paybackSeason
          neverShare
        }
        cases {
          kind
          end {
            npvUsd
            paybackSeason
            neverShare
          }
        }
      }
    }
  }
`);

export const ChooseCase = graphql(`
  mutation ChoosePriceCase($input: ChoosePriceCaseInput!) {
    choosePriceCase(input: $input) {
      ...Saved
    }
  }
`);

export const SettingsQuery = graphql(`
  query PriceSettings($fuel: FuelKind!, $trial: PriceSettingsInput) {
    priceSettings(fuel: $fuel, trial: $trial) {
      fuel
      seriesName
      unit
      lastMonth
      levelMeaning
      knobs {
        field
        title
        unit
        own
        usual
        low
        high
        words
      }
      models {
        key
        name
        shortReversionPerYear
        halfLifeMonths
        longReversionPerYear
        longShare
        volatilityPerYear
        longVolatility
        shortVolatility
        growthPerYear
        outlook {
          years
          p10
          middle
          mean
          p90
        }
      }
      freeFit {
        shortReversionPerYear
        longShare
        volatilityPerYear
        halfLifeMonths
        halfLifeLowMonths
        halfLifeHighMonths
        isDetermined
      }
      faults {
        field
        message
        remedy
      }
    }
  }
`);

export const TrialQuery = graphql(`
  query PriceTrial($id: ID!, $trial: PriceSettingsInput!) {
    option(id: $id) {
      id
      priceTrial(trial: $trial) {
        now {
          npvUsd
          paybackSeason
          neverShare
        }
        tried {
          npvUsd
          paybackSeason
          neverShare
        }
      }
    }
  }
`);

export const SaveSettings = graphql(`
  mutation SavePriceSettings($input: SavePriceSettingsInput!) {
    savePriceSettings(input: $input) {
      ...Saved
    }
  }
`);

export const CorrelationsQuery = graphql(`
  query PriceCorrelations {
    coop {
      scenarioSet {
        id
        revision
      }
      priceCorrelations {
        shortTerm
        longTerm
        isOwn
        usualShortTerm
        usualLongTerm
        fittedShortTerm
        fittedLongTerm
        sharedMonths
      }
    }
  }
`);

export const SaveCorrelations = graphql(`
  mutation SavePriceCorrelations($input: SaveCorrelationsInput!) {
    savePriceCorrelations(input: $input) {
      ...Saved
      nearestCorrelations {
        field
        values
        distance
      }
    }
  }
`);
