import type { LoanTermsInput, LoanTermsPartsFragment, SaveLoanCaseInput } from '../../lib/graphql/generated/graphql.ts';

/** What was typed, as text; shares in per cent. */
export type Typed = Record<Key, string>;

const money = ['amountUsd', 'downPaymentUsd', 'grantUsd', 'feeUsd', 'operatingLineUsd', 'reserveUsd'] as const;
const counts = ['termYears', 'grantMonths', 'resetMonths', 'deferralMonths'] as const;
const shares = [
  'ratePerYear',
  'indexPerYear',
  'marginPerYear',
  'guaranteeShare',
  'lossGivenDefault',
  'marginSd',
  'capacityGrowthPerYear',
] as const;
const plain = ['requiredProjectCover', 'requiredFarmCover'] as const;
type Word =
  'name' | 'note' | 'houseId' | 'optionKey' | 'state' | 'rateKind' | 'payments' | 'deferredInterest' | 'feeInAmount' | 'drawsMargin';

export type Key = (typeof money | typeof counts | typeof shares | typeof plain)[number] | Word;

const round = (v: number, digits: number) => String(Number(v.toFixed(digits)));

/** What a new case starts from; figures that are common practice, to be changed. */
export const usual: Typed = {
  name: '',
  note: '',
  houseId: '',
  optionKey: '',
  state: 'ASKED',
  amountUsd: '',
  downPaymentUsd: '',
  grantUsd: '',
  grantMonths: '6',
  feeUsd: '',
  feeInAmount: 'yes',
  rateKind: 'FIXED',
  ratePerYear: '7.5',
  indexPerYear: '4.3',
  marginPerYear: '3',
  resetMonths: '12',
  termYears: '7',
  payments: 'MONTHLY',
  deferralMonths: '0',
  deferredInterest: 'PAID',
  guaranteeShare: '0',
  requiredProjectCover: '1',
  requiredFarmCover: '1.25',
  operatingLineUsd: '',
  reserveUsd: '',
  lossGivenDefault: '50',
  drawsMargin: 'yes',
  marginSd: '15',
  capacityGrowthPerYear: '',
};

/** The terms of a case as one would have typed them. */
export function typedOf(terms: LoanTermsPartsFragment, name: string, note: string | null | undefined): Typed {
  const typed: Typed = { ...usual, name, note: note ?? '', houseId: terms.houseId, optionKey: terms.optionKey };
  for (const key of money) typed[key] = terms[key] === 0 && key !== 'amountUsd' ? '' : round(terms[key], 2);
  for (const key of counts) typed[key] = String(terms[key]);
  for (const key of plain) typed[key] = round(terms[key], 3);
  for (const key of shares) {
    const share = terms[key];
    typed[key] = share === null || share === undefined ? '' : round(100 * share, 3);
  }
  for (const key of ['state', 'rateKind', 'payments', 'deferredInterest'] as const) typed[key] = terms[key];
  typed.feeInAmount = terms.feeInAmount ? 'yes' : 'no';
  typed.drawsMargin = terms.drawsMargin ? 'yes' : 'no';
  return typed;
}

const number = (text: string): number | null =>
  text.trim() === '' ? null : Number(text.replaceAll(',', '').replace('%', '').replace('$', ''));

/** What is sent: an empty field is left out, so that the server takes what is usual. */
export function inputOf(typed: Typed, requestId: string, known?: { id: string; revision: number }, checkOnly = false): SaveLoanCaseInput {
  const whole = (key: Key) => {
    const n = number(typed[key]);
    return n === null ? null : Number.isInteger(n) ? n : NaN;
  };
  const share = (key: Key) => {
    const n = number(typed[key]);
    return n === null ? null : n / 100;
  };
  const terms: LoanTermsInput = {
    houseId: typed.houseId,
    optionKey: typed.optionKey,
    amountUsd: number(typed.amountUsd) ?? 0,
    termYears: whole('termYears') ?? 0,
    state: typed.state as LoanTermsInput['state'],
    downPaymentUsd: number(typed.downPaymentUsd),
    grantUsd: number(typed.grantUsd),
    grantMonths: whole('grantMonths'),
    feeUsd: number(typed.feeUsd),
    feeInAmount: typed.feeInAmount === 'yes',
    rateKind: typed.rateKind as LoanTermsInput['rateKind'],
    ratePerYear: share('ratePerYear'),
    indexPerYear: share('indexPerYear'),
    marginPerYear: share('marginPerYear'),
    resetMonths: whole('resetMonths'),
    payments: typed.payments as LoanTermsInput['payments'],
    deferralMonths: whole('deferralMonths'),
    deferredInterest: typed.deferredInterest as LoanTermsInput['deferredInterest'],
    guaranteeShare: share('guaranteeShare'),
    requiredProjectCover: number(typed.requiredProjectCover),
    requiredFarmCover: number(typed.requiredFarmCover),
    operatingLineUsd: number(typed.operatingLineUsd),
    reserveUsd: number(typed.reserveUsd),
    lossGivenDefault: share('lossGivenDefault'),
    drawsMargin: typed.drawsMargin === 'yes',
    marginSd: share('marginSd'),
    capacityGrowthPerYear: share('capacityGrowthPerYear'),
  };
  return {
    id: known?.id ?? null,
    expectedRevision: known?.revision ?? null,
    requestId,
    name: typed.name,
    note: typed.note,
    terms,
    checkOnly,
  };
}
