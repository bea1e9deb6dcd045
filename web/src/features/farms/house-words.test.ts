import { describe, expect, it } from 'vitest';
import { fuelOfHeater, fuels, fuelUnits, heatedBy, heaterOfFuel, heaters, usualUnit } from './house-words.ts';

describe('heaters and the fuels they take', () => {
  it('offers pellets, resistance and heat pump beside the burners', () => {
    expect(heaters.map(([code]) => code)).toEqual(expect.arrayContaining(['pellet', 'resistance', 'heatpump']));
    expect(fuels.map(([fuel]) => fuel)).toEqual(expect.arrayContaining(['WOOD_PELLETS', 'ELECTRICITY']));
  });

  it('sets the fuel that a kind takes alone and leaves the others', () => {
    expect(fuelOfHeater('heatpump', 'PROPANE')).toBe('ELECTRICITY');
    expect(fuelOfHeater('pellet', 'NATURAL_GAS')).toBe('WOOD_PELLETS');
    expect(fuelOfHeater('condensing', 'NATURAL_GAS')).toBe('NATURAL_GAS');
    expect(fuelOfHeater('power', 'WOOD_PELLETS')).toBe('PROPANE');
    expect(fuelOfHeater('', 'WOOD_PELLETS')).toBe('WOOD_PELLETS');
  });

  it('changes a kind of heater that does not take the fuel, and no other', () => {
    expect(heaterOfFuel('ELECTRICITY', 'power')).toBe('resistance');
    expect(heaterOfFuel('ELECTRICITY', 'heatpump')).toBe('heatpump');
    expect(heaterOfFuel('WOOD_PELLETS', 'condensing')).toBe('pellet');
    expect(heaterOfFuel('NATURAL_GAS', 'pellet')).toBe('power');
    expect(heaterOfFuel('PROPANE', 'condensing')).toBe('condensing');
    expect(heaterOfFuel('WOOD_PELLETS', '')).toBe('');
  });

  it('counts every fuel in a unit it is sold in', () => {
    expect(fuels.every(([fuel]) => (fuelUnits[fuel] ?? []).length > 1)).toBe(true);
    expect(usualUnit('WOOD_PELLETS', 'us')).toBe('ton');
  });
});

it('names own periods before any plan, and the plan taken for granted where nothing is told', () => {
  const own = [{ fromMonth: 2, fromDay: 15, toMonth: 5, toDay: 31 }];
  expect(heatedBy({ heatingPlanCode: 'greens', ownPeriods: own })).toBe('own: 2/15 to 5/31');
  expect(heatedBy({ heatingPlanCode: 'greens', ownPeriods: [] })).toBe('winter greens');
  expect(heatedBy({ heatingPlanCode: null, ownPeriods: [] })).toBe('February to May, 60 F by night');
});
