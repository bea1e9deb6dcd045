import { graphql } from '../../lib/graphql/generated/index.ts';

export const Bills = graphql(`
  query Bills($id: ID!) {
    supplyGroup(id: $id) {
      id
      name
      kind
      fuel
      houses {
        id
      }
      bills {
        ...Bills
      }
    }
  }
  fragment Bills on FuelBills {
    revision
    automaticDelivery
    withoutWeather
    notes
    multiplier {
      value
      low
      high
    }
    baseKwhPerDay {
      value
      low
      high
    }
    baseIsFitted
    nmbePct
    cvRmsePct
    describedNmbePct
    describedCvRmsePct
    check {
      seasonName
      fromOn
      toOn
      seasonShare
      reckonedKwh
      billedKwh
    }
    reasons {
      airChangesFactor
      filmFactor
    }
    apart {
      airFactor
      airLow
      airHigh
      filmFactor
      filmLow
      filmHigh
      billsTell
    }
    believed
    grade
    sdPct
    verdict
    checks
    raise
    intervals {
      fromOn
      toOn
      days
      billedKwh
      describedKwh
      fittedKwh
      residualKwh
      heatedDays
      metered
      outlying
      note
    }
    entries {
      no
      kind
      fromOn
      toOn
      quantity
      unit
      totalUsd
      priceUsdPerUnit
      feesUsd
      read
      gaugeBeforePct
      gaugeAfterPct
      thermsPerCcf
      onlyDollars
      confirmed
      issuedOn
      note
      takenOut
      spreadShare
      use
      why
      faults {
        code
        field
        message
        remedy
      }
    }
  }
`);

export const SaveFuelRecord = graphql(`
  mutation SaveFuelRecord($input: SaveFuelRecordInput!) {
    saveFuelRecord(input: $input) {
      changeId
      conflict
      faults {
        field
        message
        remedy
      }
      preview {
        ...Bills
      }
    }
  }
`);

export const ImportFuelRecord = graphql(`
  mutation ImportFuelRecord($input: ImportFuelRecordInput!) {
    importFuelRecord(input: $input) {
      changeId
      rows
      words
      faults {
        line
        column
        message
        remedy
      }
      preview {
        ...Bills
      }
    }
  }
`);
