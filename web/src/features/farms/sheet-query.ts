import type { GrowerSheetQuery } from '../../lib/graphql/generated/graphql.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

export const GrowerSheet = graphql(`
  query GrowerSheet($id: ID!) {
    coop {
      name
      isDemo
      newestStudy {
        number
        askedAt
        futuresCount
        changedSince
      }
    }
    house(id: $id) {
      id
      name
      widthM
      lengthM
      bays
      covering
      fuel
      dataGrade
      installedCodes
      farm {
        id
        name
        stationName
      }
      geometry {
        ridgeM
        sideWallM
        overallWidthM
        lengthM
        floorM2
        curtainHeightM
        filmGapM
        roofFilms
        profile {
          x
          y
        }
      }
      heat {
        seasonName
        fromNormals
        roofKwh
        sideWallsKwh
        endWallsKwh
        perimeterKwh
        airKwh
        purgeKwh
        solarUsedKwh
        demandKwh
      }
      backCheck {
        seasonName
        reckonedKwhFuel
        billedKwhFuel
        verdict
      }
      fromDefaults {
        title
        value
        unit
      }
      awards {
        id
        optionId
        round
        decisionNumber
        grantCapUsd
        grantShare
        obligationYears
        returnedOn
        milestones {
          kind
          dueOn
        }
      }
      options {
        id
        key
        title
        parts
        outlayUsd
        outlayBasis
        outlayRange {
          p10
          p90
        }
        runningUsd
        running {
          what
          usd
          quantity
          unit
        }
        lifeYears
        isRunningChange
        drawbacks
        cautions
        skills
        result {
          outlayUsd
          notCounted
          npvUsd {
            p50
          }
          savingUsd {
            p10
            p50
            p90
          }
          lastingPayback {
            p50Season
            p90Season
            neverShare
          }
        }
      }
    }
    exposure(houseId: $id) {
      season
      heatKwh {
        mean
        p10
        p90
      }
      ways {
        key
        name
        fuel
        isOwn
        isReckoned
        units
        unit
        costUsd {
          p10
          p50
          p90
        }
      }
      options {
        key
        costUsd {
          p10
          p50
          p90
        }
      }
    }
  }
`);

export type SheetHouse = NonNullable<GrowerSheetQuery['house']>;
export type SheetOption = SheetHouse['options'][number];
export type SheetExposure = NonNullable<GrowerSheetQuery['exposure']>;
