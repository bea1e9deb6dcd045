import { graphql } from '../../lib/graphql/generated/index.ts';
import type { LoanCaseQuery } from '../../lib/graphql/generated/graphql.ts';

graphql(`
  fragment LoanTermsParts on LoanTerms {
    houseId
    optionKey
    state
    amountUsd
    downPaymentUsd
    grantUsd
    grantMonths
    feeUsd
    feeInAmount
    rateKind
    ratePerYear
    indexPerYear
    marginPerYear
    rateNow
    resetMonths
    termYears
    payments
    deferralMonths
    deferredInterest
    guaranteeShare
    requiredProjectCover
    requiredFarmCover
    operatingLineUsd
    reserveUsd
    lossGivenDefault
    drawsMargin
    marginSd
    capacityGrowthPerYear
  }
`);

export const LoansDocument = graphql(`
  query Loans {
    coop {
      newestStudy {
        number
      }
      loanCases {
        id
        revision
        name
        farm {
          name
        }
        terms {
          state
          amountUsd
          termYears
          rateNow
          rateKind
          payments
        }
        problem {
          message
          remedy
        }
        answer {
          paymentUsd
          defaultShare
          project {
            underOneShare
          }
          farm {
            underOneShare
          }
          lossUsd {
            mean
          }
          largest {
            confidence
            projectUsd
            farmUsd
          }
        }
      }
    }
  }
`);

export const LoanCaseDocument = graphql(`
  query LoanCase($id: ID!) {
    loanCase(id: $id) {
      id
      revision
      name
      note
      collateralUsd
      collateral {
        what
        worthUsd
        asOfOn
      }
      covenants {
        words
        dueOn
      }
      changedAt
      changedBy
      terms {
        ...LoanTermsParts
      }
      farm {
        id
        name
        place
        statements {
          id
          revision
          year
          netFarmIncomeUsd
          offFarmIncomeUsd
          depreciationUsd
          termInterestUsd
          familyLivingUsd
          incomeTaxesUsd
          heatingUsd
          termDebtServiceUsd
        }
      }
      house {
        id
        name
        dataGrade
      }
      option {
        id
        title
        outlayUsd
        outlayBasis
        lifeYears
        result {
          outlayUsd
          savingUsd {
            p10
            p50
            p90
          }
        }
      }
      warnings {
        code
        message
        remedy
      }
      problem {
        message
        remedy
      }
      answer {
        futuresCount
        paymentUsd
        interestUsd
        farmHeatingUsd
        defaultShare
        defaultHalfWidth
        project {
          ...CoverParts
        }
        farm {
          ...CoverParts
        }
        capacity {
          years
          yearsAsked
          usd
          heatingUsd
          termDebtServiceUsd
          lines {
            what
            usd
          }
        }
        seasons {
          season
          serviceUsd
          interestUsd
          balanceUsd
          runningUsd
        }
        carriedUsd {
          p50
          p90
          p95
        }
        lossUsd {
          mean
          p95
        }
        breakEven {
          middleMultiple
          oneInTenMultiple
          shortShare
          askedUsd
          reckonedUsd
          unit
          priceUsdPerUnit
          reckonedPriceUsdPerUnit
          priceUsdPerKwh
          reckonedPriceUsdPerKwh
        }
        largest {
          confidence
          projectUsd
          farmUsd
        }
        cash {
          name
          atOnceUsd
          savingUsd
          paidUsd
          ownUsd
        }
      }
    }
    coop {
      name
      newestStudy {
        number
        askedAt
        evidenceUsed
      }
    }
    version
  }
`);

graphql(`
  fragment CoverParts on Cover {
    underOneShare
    underOneHalfWidth
    underRequiredShare
    underRequiredHalfWidth
    longestRunShare
    worst {
      p10
      p50
      p90
    }
    bySeason {
      season
      underOneShare
      cover {
        p10
        p25
        p50
        p75
        p90
      }
    }
  }
`);

export const LoanStressDocument = graphql(`
  query LoanStresses($id: ID!) {
    loanCase(id: $id) {
      id
      inBook {
        others
        withP99Usd
        withoutP99Usd
      }
      stresses {
        kind
        applies
        projectUnderOneShare
        projectWorst
        farmUnderOneShare
        farmUnderRequiredShare
        farmWorst
        defaultShare
        lossUsd
      }
    }
  }
`);

export const LoanOptionsDocument = graphql(`
  query LoanOptions($id: ID!) {
    house(id: $id) {
      id
      options {
        key
        title
        outlayUsd
      }
    }
  }
`);

export const SaveLoanCaseDocument = graphql(`
  mutation SaveLoanCase($input: SaveLoanCaseInput!) {
    saveLoanCase(input: $input) {
      caseId
      changeId
      conflict
      faults {
        field
        message
        remedy
      }
      warnings {
        field
        message
        remedy
      }
      answer {
        paymentUsd
        project {
          underOneShare
        }
        farm {
          underOneShare
        }
        largest {
          confidence
          projectUsd
          farmUsd
        }
      }
    }
  }
`);

export const SaveStatementDocument = graphql(`
  mutation SaveStatement($input: SaveStatementInput!) {
    saveStatement(input: $input) {
      ...Saved
    }
  }
`);

export const DeleteLoanDocument = graphql(`
  mutation DeleteLoan($id: ID!, $revision: Int!, $requestId: ID!) {
    deleteItem(id: $id, expectedRevision: $revision, requestId: $requestId) {
      ...Saved
    }
  }
`);

export const UndoLoanDocument = graphql(`
  mutation UndoLoan($changeId: ID!, $requestId: ID!) {
    undo(changeId: $changeId, requestId: $requestId) {
      ...Saved
    }
  }
`);

export type LoanCase = NonNullable<LoanCaseQuery['loanCase']>;
export type LoanAnswer = NonNullable<LoanCase['answer']>;
export type CoverFigures = LoanAnswer['project'];
