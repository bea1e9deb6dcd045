import { unitIn, type UnitSystem } from '../../lib/units/format.ts';

/** Codes of coverings with their plain names. */
export const coverings = [
  ['glass', 'single glass'],
  ['singlefilm', 'single film'],
  ['doublefilm', 'double film, inflated'],
  ['doublefilm-ir', 'double film, inner one holds heat'],
  ['twinwall', 'twin-wall polycarbonate'],
] as const;

/** Codes of heaters with their plain names. */
export const heaters = [
  ['gravity', 'gravity vented'],
  ['power', 'power vented'],
  ['separated', 'separated combustion'],
  ['condensing', 'condensing'],
  ['oilfurnace', 'oil furnace'],
  ['resistance', 'electric resistance'],
  ['heatpump', 'heat pump, air source'],
  ['pellet', 'wood pellets'],
] as const;

export const fuels = [
  ['PROPANE', 'propane'],
  ['NATURAL_GAS', 'natural gas'],
  ['FUEL_OIL', 'No. 2 oil'],
  ['ELECTRICITY', 'electricity'],
  ['WOOD_PELLETS', 'wood pellets'],
] as const;

/** The fuel that a kind of heater is set to when it is chosen: its only one, or, where it cannot take the one told, the usual. */
export const fuelOfHeater = (code: string, told: string): string => {
  if (code === 'resistance' || code === 'heatpump') return 'ELECTRICITY';
  if (code === 'pellet') return 'WOOD_PELLETS';
  if (code === 'oilfurnace') return 'FUEL_OIL';
  return code !== '' && (told === 'ELECTRICITY' || told === 'WOOD_PELLETS') ? 'PROPANE' : told;
};

/** The kind of heater that goes with a fuel when that is chosen: the one told where it takes it, else the usual. */
export const heaterOfFuel = (fuel: string, told: string): string => {
  const takes = fuelOfHeater(told, fuel) === fuel;
  if (told === '' || takes) return told;
  return fuel === 'ELECTRICITY' ? 'resistance' : fuel === 'WOOD_PELLETS' ? 'pellet' : fuel === 'FUEL_OIL' ? 'oilfurnace' : 'power';
};

export const shapes = [
  ['HOOP', 'hoop'],
  ['GOTHIC_ARCH', 'Gothic arch'],
  ['GABLE', 'gable'],
  ['GUTTER_CONNECTED', 'gutter-connected'],
] as const;

/** Units a fuel is sold in, the usual one first. */
export const fuelUnits: Record<string, readonly string[]> = {
  PROPANE: ['gal', 'L', 'lb', 'MMBtu', 'kWh'],
  NATURAL_GAS: ['therm', 'ccf', 'mcf', 'm3', 'MMBtu', 'kWh'],
  FUEL_OIL: ['gal', 'L', 'MMBtu', 'kWh'],
  ELECTRICITY: ['kWh', 'MMBtu'],
  WOOD_PELLETS: ['ton', 'lb', 'MMBtu', 'kWh'],
};

/** The unit a form begins with: the usual one of the chosen system among those the fuel is sold in. */
export const usualUnit = (fuel: string, units: UnitSystem): string => {
  const [usual = 'kWh', ...others] = fuelUnits[fuel] ?? [];
  return units === 'us' ? usual : (others.find((u) => u === unitIn(usual, 'si')) ?? usual);
};

/** Codes of retrofits with their plain names. */
export const retrofits = [
  ['foam', 'foam between the films'],
  ['curtain', 'night curtain'],
  ['blanket', 'blanket over the house'],
  ['irfilm', 'inner film that holds heat'],
  ['seal', 'sealing'],
  ['kneewall', 'knee walls'],
  ['endwalls', 'end walls'],
  ['perimeter', 'edge insulation'],
  ['condensing', 'condensing heater'],
  ['service', 'service of the heater'],
  ['secondfilm', 'second film'],
] as const;

/** Codes of heating plans with their plain names. */
export const plans = [
  ['spring', 'February to May, 60 F by night'],
  ['bedding-early', 'spring bedding, early'],
  ['bedding-late', 'spring bedding, late start'],
  ['tomato-early', 'tomato in the ground, early'],
  ['greens', 'winter greens'],
  ['greens-warm', 'winter greens, kept growing'],
  ['lettuce', 'lettuce, all year'],
  ['poinsettia', 'poinsettia'],
  ['overwinter', 'overwintering perennials'],
  ['winter-long', 'November to April, 60 F by night'],
] as const;

interface Heated {
  heatingPlanCode?: string | null;
  ownPeriods: readonly { fromMonth: number; fromDay: number; toMonth: number; toDay: number }[];
}

/** When a house is heated: its own periods where it has some, else its plan, or the one that is taken for granted. */
export const heatedBy = ({ heatingPlanCode, ownPeriods }: Heated): string =>
  ownPeriods.length > 0
    ? `own: ${ownPeriods.map((p) => `${String(p.fromMonth)}/${String(p.fromDay)} to ${String(p.toMonth)}/${String(p.toDay)}`).join(', ')}`
    : (plans.find(([code]) => code === (heatingPlanCode ?? 'spring'))?.[1] ?? heatingPlanCode ?? '');
