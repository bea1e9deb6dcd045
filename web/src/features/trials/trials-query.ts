import { graphql } from '../../lib/graphql/generated/index.ts';
import type { EvidencePageQuery } from '../../lib/graphql/generated/graphql.ts';

export const EvidencePageDocument = graphql(`
  query EvidencePage {
    coop {
      trials {
        id
        revision
        name
        place
        note
        houses
        nightsAside {
          no
          house
          from
          to
          reason
        }
        startsOn
        endsOn
        station
        control
        faults {
          message
          remedy
        }
        comparisons {
          house
          retrofitCode
          retrofitTitle
          saving {
            value
            low
            high
          }
          asRunSaving
          savedKwh {
            value
            low
            high
          }
          modelledSaving
          factor {
            value
            low
            high
          }
          idleKnown
          nightsInUse
          nightsBroken
          nightsIdle
          nights {
            on
            outsideC
            controlLiftK
            controlKwhPerDay
            treatedLiftK
            treatedKwhPerDay
            state
            leftOut
          }
          controlLine {
            atZeroKwh
            kwhPerK
            fromK
            toK
          }
          treatedLine {
            atZeroKwh
            kwhPerK
            fromK
            toK
          }
          byCold {
            fromC
            toC
            nights
            saving {
              value
              low
              high
            }
          }
          perKelvinColder {
            value
            low
            high
          }
          words
          elsewhere {
            station
            modelledSaving
            saving {
              value
              low
              high
            }
          }
          worth {
            fuel
            usdPerUnit
            unit
            usd {
              value
              low
              high
            }
          }
          weeksFor {
            halfWidthPoints
            weeksInUse
            weeksIdle
          }
        }
      }
      realisedFactors {
        retrofitCode
        retrofitTitle
        priorMean
        priorSd
        sites
        mean
        sd
        words
      }
      evidence {
        id
        revision
        retrofitCode
        retrofitTitle
        kind
        source
        note
        factorMean
        factorSd
        savingShare
        counted
        setAsideReason
      }
      trialWeeks {
        halfWidthPoints
        weeksInUse
        weeksIdle
      }
      weatherStations {
        id
        markedName
      }
      houses(first: 1) {
        items {
          id
        }
      }
      newestStudy {
        number
        evidenceUsed
      }
    }
  }
`);

export type EvidenceCoop = EvidencePageQuery['coop'];
export type Trial = EvidenceCoop['trials'][number];
export type Comparison = Trial['comparisons'][number];
export type Evidence = EvidenceCoop['evidence'][number];
export type Factor = EvidenceCoop['realisedFactors'][number];

export const percent = (share: number): string =>
  `${Math.round(100 * share)
    .toString()
    .replace('-', '−')} %`;
export const range = (m: { low: number; high: number }): string =>
  `${Math.round(100 * m.low)
    .toString()
    .replace('-', '−')} to ${Math.round(100 * m.high)
    .toString()
    .replace('-', '−')} %`;
/** A retrofit's name inside a sentence: "Night curtain, flat" becomes "the night curtain". */
export const inWords = (title: string): string => {
  const first = title.split(',')[0] ?? title;
  return `the ${first.charAt(0).toLowerCase()}${first.slice(1)}`;
};
