import type { FundingQuery } from '../../lib/graphql/generated/graphql.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

export const Funding = graphql(`
  query Funding($rules: FundingRulesInput!, $roundId: ID, $afterRank: Int!, $out: Int!) {
    fundingOrder(rules: $rules, roundId: $roundId) {
      availableUsd
      emissionFactors
      grantUsd
      nextAddsUsd
      heatSavedShare
      worstTenthUsd
      promisedUsd
      foundUsd
      merit
      groupsCostUsd
      groups {
        name
        minimumShare
        fundedUsd
        fundedHouses
      }
      measures {
        merit
        grantUsd
        savingUsd
        worstTenthUsd
        heatSavedKwh
        co2SavedKg
        fundedTotal
        enter {
          optionId
          title
        }
        leave {
          optionId
          title
        }
      }
      savingUsd {
        p10
        p50
        p90
      }
      frontier {
        grantUsd
        savingP10
        savingP25
        savingP50
        savingP75
        savingP90
      }
      notEligibleTotal
      notEligible(first: $out) {
        why
        rule
        option {
          id
          title
          house {
            name
            farm {
              name
            }
          }
        }
      }
      rowTotal
      housesOut {
        houseCount
        byRule
        withoutOutlay
        notStudied
      }
      fundedTotal
      fundedOutlayUsd
      fundedOwnPartUsd
      below {
        why
        option {
          id
          house {
            name
            farm {
              name
            }
          }
        }
      }
      rows(first: 100, afterRank: $afterRank) {
        rank
        funded
        pinned
        fundedShare
        grantUsd
        ownPartUsd
        meritPerGrantUsd
        why
        askedUsd
        conditions
        option {
          id
          key
          title
          cautions
          house {
            id
            name
            dataGrade
            farm {
              name
            }
          }
        }
        result {
          outlayUsd
          savingUsd {
            mean
            p10
            p50
            p90
          }
          heatSavedKwh
          co2SavedKg
          lastingPayback {
            p10Season
            p25Season
            p50Season
            p75Season
            p90Season
            neverShare
            shareBySeason
          }
          lossShare
        }
      }
    }
  }
`);

export type Order = NonNullable<FundingQuery['fundingOrder']>;
export type Row = Order['rows'][number];
