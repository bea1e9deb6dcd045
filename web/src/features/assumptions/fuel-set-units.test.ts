import { expect, test } from 'vitest';
import { emissionUnit, heatColumns } from './fuel-set-units.ts';

test('sources print Btu: under US units their own figures stand', () => {
  expect(heatColumns('us').map((c) => c.times)).toEqual([1, 1, 1, 1]);
  expect(emissionUnit('us')).toEqual({ head: 'kg CO₂ a MMBtu', times: 1 });
});

test('under SI a set is told a cubic metre, a litre, a tonne and a MWh', () => {
  const [gas, propane, oil, pellets] = heatColumns('si');
  // EIA 2012; a Btu is 0.29307107 Wh
  expect(1025 * gas.times).toBeCloseTo(10.6085, 3);
  expect(91_333 * propane.times).toBeCloseTo(7.0711, 3);
  expect(138_690 * oil.times).toBeCloseTo(10.7375, 3);
  expect(16_500_000 * pellets.times).toBeCloseTo(5330.4, 0);
  // 40 CFR 98: 62.87 kg a MMBtu of propane
  expect(62.87 * emissionUnit('si').times).toBeCloseTo(214.52, 1);
  expect([gas, propane, oil, pellets].every((c) => !c.head.includes('Btu'))).toBe(true);
});
