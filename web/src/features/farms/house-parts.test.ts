import { describe, expect, it } from 'vitest';
import { partsInput, type TypedParts } from './house-parts.ts';

const was: TypedParts = {
  shape: 'HOOP',
  bays: '1',
  surfaces: [{ part: 'ROOF', code: 'doublefilm', year: '2024', condition: '' }],
  periods: [{ from: '2/15', to: '5/31', night: '60.1', day: '65' }],
  heaters: [{ code: 'power', fuel: 'PROPANE', input: '250000', efficiency: '', year: '' }],
  supplies: [{ id: 'g', heater: '1', share: '100' }],
  installed: [],
  crop: '',
  light: '',
  space: '',
  shading: '',
};

describe('parts of a house', () => {
  it('leaves out what was not touched, so that rounding changes nothing', () => {
    expect(Object.keys(partsInput(was, was, 'us')).sort()).toEqual(['bays', 'shape']);
  });

  it('turns what was touched into SI', () => {
    const input = partsInput({ ...was, periods: [{ from: '2/15', to: '5/31', night: '50', day: '59' }], crop: '2' }, was, 'us');
    expect(input.heatingPeriods?.[0]).toMatchObject({ fromMonth: 2, fromDay: 15, toMonth: 5, toDay: 31, nightC: 10, dayC: 15 });
    expect(input.worth?.cropUsdPerM2).toBeCloseTo(2 / 0.09290304, 6);
    expect(input.worth?.yieldPerLight).toBeNull();
  });

  it('sends a word as no number, so that the server can say so', () => {
    const input = partsInput({ ...was, heaters: [{ code: 'power', fuel: 'PROPANE', input: 'big', efficiency: '', year: '' }] }, was, 'si');
    expect(input.heaters?.[0]?.inputKw).toBeNaN();
  });
});
