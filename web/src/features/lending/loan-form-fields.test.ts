import { describe, expect, it } from 'vitest';
import { inputOf, typedOf, usual } from './loan-form-fields.ts';

describe('terms typed', () => {
  const typed = { ...usual, houseId: 'h', optionKey: 'curtain-now', amountUsd: '$8,000', ratePerYear: '7.25 %', guaranteeShare: '80' };

  it('sends shares for per cents and leaves empty fields out', () => {
    const { terms, checkOnly } = inputOf(typed, 'r', { id: 'lc', revision: 3 }, true);
    expect(terms.amountUsd).toBe(8000);
    expect(terms.ratePerYear).toBeCloseTo(0.0725, 12);
    expect(terms.guaranteeShare).toBe(0.8);
    expect(terms.grantUsd).toBeNull();
    expect(terms.capacityGrowthPerYear).toBeNull();
    expect(checkOnly).toBe(true);
  });

  it('takes half a year for no whole number', () => {
    expect(inputOf({ ...typed, termYears: '6.5' }, 'r').terms.termYears).toBeNaN();
  });

  it('shows the terms of a case as they were typed', () => {
    const back = typedOf(
      {
        ...(inputOf(typed, 'r').terms as unknown as Parameters<typeof typedOf>[0]),
        downPaymentUsd: 0,
        grantUsd: 0,
        feeUsd: 0,
        operatingLineUsd: 0,
        reserveUsd: 0,
        rateNow: 0.0725,
      },
      'a name',
      null,
    );
    expect(back).toMatchObject({
      amountUsd: '8000',
      ratePerYear: '7.25',
      guaranteeShare: '80',
      grantUsd: '',
      capacityGrowthPerYear: '',
      feeInAmount: 'yes',
    });
  });
});
