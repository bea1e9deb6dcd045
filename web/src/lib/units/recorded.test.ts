import { expect, it } from 'vitest';
import { recorded } from './recorded.ts';

it('tells a record in feet, Fahrenheit, gallons and Btu where the switch is on US, without the digits of turning units', () => {
  expect(recorded('length (m)', ['29.260800000000003', '36.576'], 'us')).toEqual({ title: 'length (ft)', values: ['96', '120'] });
  expect(recorded('heating periods 1, night (C)', ['15.555555555555555', null], 'us').values).toEqual(['60', 'not told']);
  expect(recorded('tank size (L)', ['3785.411784'], 'us')).toEqual({ title: 'tank size (gal)', values: ['1000'] });
  expect(recorded('length (m)', ['29.260800000000003', '36.576'], 'si')).toEqual({ title: 'length (m)', values: ['29.2608', '36.576'] });
});

it('leaves words, whole numbers, days and identifiers as they were recorded', () => {
  for (const value of ['spring', '2024', '2026-07-01', 'ps_01a21b0312577e49', '12345678', '1.2.3'])
    expect(recorded('what', [value], 'us').values).toEqual([value]);
});
