import { graphql } from '../../lib/graphql/generated/index.ts';

export const UseEmissions = graphql(`
  mutation UseEmissions($input: EmissionSetInput!) {
    useEmissionSet(input: $input) {
      ...Saved
    }
  }
`);

export const UseHeatingValues = graphql(`
  mutation UseHeatingValues($input: HeatingValueSetInput!) {
    useHeatingValueSet(input: $input) {
      ...Saved
    }
  }
`);

export const Assumptions = graphql(`
  query Assumptions {
    heatingValueSets {
      name
      year
      source
      inUse
      gasBtuPerCubicFoot
      propaneBtuPerGallon
      oilBtuPerGallon
      pelletsBtuPerTon
    }
    emissionSets {
      name
      year
      source
      inUse
      gasKgPerMmbtu
      propaneKgPerMmbtu
      oilKgPerMmbtu
      woodKgPerMmbtu
    }
    coop {
      newestStudy {
        emissionFactors
        heatingValues
      }
      scenarioSet {
        id
        revision
        name
        firstSeason
        seasonCount
        discountRate
        levelMeaning
        priceCase {
          title
          seasonName
        }
      }
      assumptionSets {
        key
        name
        values {
          field
          title
          unit
          value
          default
          low
          high
          source
        }
      }
      catalogueFigures {
        kind
        code
        of
        name
        title
        value
        builtIn
        unit
        low
        high
        status
        source
        isOwn
        reason
      }
    }
  }
`);

export const SaveAssumption = graphql(`
  mutation SaveAssumption($input: AssumptionInput!) {
    saveAssumption(input: $input) {
      ...Saved
    }
  }
`);

export const SaveFigure = graphql(`
  mutation SaveCatalogueFigure($input: CatalogueFigureInput!) {
    saveCatalogueFigure(input: $input) {
      ...Saved
    }
  }
`);
