import { describe, expect, it } from 'vitest';
import {
  counted,
  dollars,
  fromMetres,
  fuelAmount,
  fuelUnitOf,
  heat,
  inDegrees,
  length,
  dollarsAndCents,
  ofHundred,
  perCent,
  speed,
  significant,
  temperature,
  toMetres,
} from './format.ts';

describe('figures', () => {
  it('shows no more digits than are known', () => {
    expect(significant(24537, 3)).toBe(24500);
    expect(dollars(329013.8)).toBe('$329,000');
    expect(dollars(-2716)).toBe('−\u2060$2,720');
  });
  it('never calls a small share none', () => {
    expect(ofHundred(0.002)).toBe('under 1');
    expect(ofHundred(0)).toBe('0');
    expect(ofHundred(0.37)).toBe('37');
  });

  it('writes a return with its sign beside it, and nothing as nothing', () => {
    expect(dollarsAndCents(1.6222)).toBe('$1.62');
    expect(dollarsAndCents(-0.124)).toBe('−\u2060$0.12');
    expect(dollarsAndCents(-0.001)).toBe('$0.00');
    expect(perCent(0.0915)).toBe('9.2');
    expect(perCent(-1)).toBe('−\u2060100.0');
    expect(perCent(-0.0001)).toBe('0.0');
  });
  it('speaks feet and inches, or metres', () => {
    expect(length(9.144, 'us')).toBe('30 ft');
    expect(length(2.2, 'us')).toBe('7 ft 3 in');
    expect(length(9.144, 'si')).toBe('9.14 m');
  });
  it('takes the unit one has', () => {
    expect(toMetres('30', 'us')).toBeCloseTo(9.144, 12);
    expect(toMetres('', 'us')).toBeUndefined();
    expect(toMetres('wide', 'si')).toBeNaN();
    expect(fromMetres(9.144, 'us')).toBe('30');
  });
  it('counts fuel in the unit it is bought by, on the heating values chosen', () => {
    const later = { propaneBtuPerGallon: 91_452, oilBtuPerGallon: 137_381, pelletsBtuPerTon: 16_500_000 };
    expect(fuelAmount(40_646, 'FUEL_OIL', 'us')).toBe('1,000 gal');
    expect(fuelAmount(40_646, 'FUEL_OIL', 'us', later)).toBe('1,010 gal');
    expect(fuelAmount(40_646, 'FUEL_OIL', 'si')).toBe('3,790 L');
    expect(fuelAmount(29_307.1, 'NATURAL_GAS', 'us', later)).toBe('1,000 therm');
    expect(fuelUnitOf('WOOD_PELLETS', 'si')[1]).toBeCloseTo(4835.67 / 0.90718, 1);
  });
  it('counts one line and two lines', () => {
    expect(counted(1, 'line')).toBe('1 line');
    expect(counted(1200, 'interval lies', 'intervals lie')).toBe('1,200 intervals lie');
  });
  it('turns wind, and differences of temperature in words', () => {
    expect(speed(6.7056, 'us')).toBe('15 mph');
    expect(speed(6.7056, 'si')).toBe('6.7 m/s');
    expect(inDegrees('−3.6 F', 'si')).toBe('−2.0 K');
    expect(inDegrees('1.8 F warmer', 'si')).toBe('1.0 K warmer');
    expect(inDegrees('1.8 F warmer', 'us')).toBe('1.8 F warmer');
  });
  it('turns heat and temperature', () => {
    expect(heat(293071.07, 'us')).toBe('1,000');
    expect(heat(5000, 'si')).toBe('5.0');
    expect(temperature(-17.7778, 'us')).toBe('0 F');
  });
});
