import { graphql } from '../../lib/graphql/generated/index.ts';

export const Farm = graphql(`
  query Farm($id: ID!) {
    farm(id: $id) {
      id
      revision
      name
      place
      stationId
      stationName
      normalsWords
      floorAreaM2
      salesUsd
      wageUsdPerHour
      electricityUsdPerKwh
      relatedKey
      relatedFarms {
        id
        name
      }
      memberSinceOn
      groups
      houses {
        id
        name
        shape
        widthM
        lengthM
        bays
        covering
        fuel
        dataGrade
        heat {
          demandKwh
          fuelKwh
          seasonName
        }
      }
      supplyGroups {
        id
        name
        kind
        fuel
        recordedLines
        contract {
          kind
          unit
          priceUsdPerUnit
          endsOn
        }
        houses {
          id
          name
        }
      }
      quotes {
        id
        revision
        supplier
        quotedOn
        validUntilOn
        firmness
        lines {
          houseId
          retrofitCode
          usd
          category
          eligible
        }
      }
    }
    coop {
      weatherStations {
        id
        name
        markedName
      }
      relatedKeys
      groupsInUse
    }
  }
`);

export const SaveFarm = graphql(`
  mutation SaveFarm($input: SaveFarmInput!) {
    saveFarm(input: $input) {
      farmId
      changeId
      conflict
      faults {
        code
        field
        message
        remedy
      }
    }
  }
`);

export const Supply = graphql(`
  query Supply($id: ID!) {
    supplyGroup(id: $id) {
      id
      revision
      name
      kind
      fuel
      tankSizeL
      otherUses
      baseUseKwhPerDay
      thermsPerCcf
      seriesChoices {
        id
        name
      }
      farm {
        id
        name
      }
      houses {
        id
        name
        heat {
          fuelKwh
        }
      }
      contracts {
        id
        revision
        name
        standing
        kind
        unit
        priceUsdPerUnit
        overIndexUsdPerUnit
        capUsdPerUnit
        floorUsdPerUnit
        adderUsdPerUnit
        indexShare
        scatterUsdPerUnit
        blockUnits
        blockPaidMonth
        leftover
        billedShare
        minimumTakeUnits
        startsOn
        endsOn
        monthlyFeeUsd
        seasonFeeUsd
        deliveryFeeUsd
        unitsPerDelivery
        tankRentUsdPerYear
        demandUsdPerKw
        loadFactor
        volumeShare
        interruptedDays
        rollsIntoContractId
        priceSeriesId
        tiers {
          fromUnits
          adderUsdPerUnit
        }
      }
    }
  }
`);

export const SaveSupply = graphql(`
  mutation SaveSupply($input: SaveSupplyGroupInput!) {
    saveSupplyGroup(input: $input) {
      ...Saved
    }
  }
`);

export const SaveContract = graphql(`
  mutation SaveContract($input: SaveContractInput!) {
    saveContract(input: $input) {
      ...Saved
    }
  }
`);

export const SaveQuote = graphql(`
  mutation SaveQuote($input: SaveQuoteInput!) {
    saveQuote(input: $input) {
      ...Saved
    }
  }
`);

export const OptionChoices = graphql(`
  query OptionChoices($id: ID!) {
    house(id: $id) {
      optionSetRevision
      retrofitChoices {
        code
        title
        fits
        whyNot
        switchesTo
      }
      farm {
        id
        supplyGroups {
          id
          name
          fuel
          contract {
            name
          }
        }
      }
      options {
        key
        title
        parts
        timing
        switchSupplyGroupId
      }
    }
  }
`);

export const SaveOptions = graphql(`
  mutation SaveOptions($input: SaveOptionSetInput!) {
    saveOptionSet(input: $input) {
      ...Saved
    }
  }
`);
