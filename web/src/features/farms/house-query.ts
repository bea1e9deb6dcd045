import { graphql } from '../../lib/graphql/generated/index.ts';

export const House = graphql(`
  query House($id: ID!, $key: String!) {
    house(id: $id) {
      id
      revision
      name
      shape
      widthM
      lengthM
      sideWallM
      ridgeM
      bays
      airChangesPerHour
      coveringCode
      covering
      heatingPlanCode
      seasonalEfficiency
      fuel
      dataGrade
      filmDueYear
      retrofitsInstalled
      installedCodes
      farm {
        id
        name
        stationName
        normalsWords
        supplyGroups {
          id
          name
        }
      }
      surfaces {
        part
        coveringCode
        installedYear
        condition
      }
      ownPeriods {
        fromMonth
        fromDay
        toMonth
        toDay
        nightC
        dayC
      }
      heaters {
        heaterCode
        fuel
        inputKw
        seasonalEfficiency
        installedYear
      }
      supplies {
        supplyGroupId
        heaterNo
        share
      }
      cropUsdPerM2
      yieldPerLight
      spaceWorth
      shadingUsdPerM2
      faults {
        message
        remedy
      }
      fromDefaults {
        field
        title
        value
        unit
        source
      }
      supplyGroups {
        id
      }
      backCheck {
        seasonName
        reckonedKwhFuel
        billedKwhFuel
        verdict
      }
      geometry {
        roofM2
        floorM2
        ridgeM
        sideWallM
        overallWidthM
        lengthM
        curtainHeightM
        filmGapM
        roofFilms
        profile {
          x
          y
        }
      }
      standing: heat(optionKey: "none") {
        ...Heat
      }
      chosen: heat(optionKey: $key) {
        ...Heat
      }
      options {
        id
        key
        title
        parts
        outlayUsd
        runningUsd
        isRunningChange
        drawbacks
        cautions
        skills
        running {
          what
          field
          quantity
        }
        result {
          outlayUsd
          npvUsd {
            p50
          }
          heatSavedKwh
          heatSavedShare
          fuelSavedKwh
          newFuel
          newFuelKwh
          savingUsd {
            p10
            p50
            p90
          }
          lastingPayback {
            p10Season
            p25Season
            p50Season
            p75Season
            p90Season
            neverShare
          }
        }
      }
    }
  }
  fragment Heat on HouseHeat {
    demandKwhByMonth
    demandKwh
    fuelKwh
    seasonName
    roofKwh
    sideWallsKwh
    endWallsKwh
    perimeterKwh
    airKwh
    purgeKwh
    solarUsedKwh
    carriedKwh
    peakKw
    designKw
    designC
    heaterOutputKw
    coldHours
    undeliveredKwh
    fromNormals
  }
`);
