import type { NewHouseInput } from '../../lib/graphql/generated/graphql.ts';
import type { UnitSystem } from '../../lib/units/format.ts';
import { toMetres } from '../../lib/units/format.ts';
import { turnedDegrees, turnedFuel, turnedLength, turnedPower, turnedPrice } from '../../lib/units/turned.ts';
import { usualUnit } from './house-words.ts';
import { typedNumber } from './save-hook.ts';

export const unanswered = {
  farmId: '',
  farmName: '',
  place: '',
  stationId: '',
  name: '',
  shape: 'HOOP',
  bays: '1',
  width: '',
  length: '',
  wall: '',
  covering: '',
  filmYear: '',
  from: '',
  to: '',
  night: '',
  day: '',
  heater: '',
  heaterYear: '',
  input: '',
  fuel: 'PROPANE',
  supply: '',
  otherUse: '',
  price: '',
  until: '',
  unit: '',
  used: '',
};
export type Answers = typeof unanswered;

/** What was typed, turned with the units; fuel by a unit that was chosen stays by that unit. */
export function turnedAnswers(a: Answers, from: UnitSystem, to: UnitSystem): Answers {
  const [unit, other] = [a.unit || usualUnit(a.fuel, from), a.unit || usualUnit(a.fuel, to)];
  return {
    ...a,
    width: turnedLength(a.width, from, to),
    length: turnedLength(a.length, from, to),
    wall: turnedLength(a.wall, from, to),
    night: turnedDegrees(a.night, from, to),
    day: turnedDegrees(a.day, from, to),
    input: turnedPower(a.input, from, to),
    used: turnedFuel(a.used, unit, other),
    price: turnedPrice(a.price, unit, other),
  };
}

const number = typedNumber;
const whole = (t: string) => {
  const value = number(t);
  return value === null ? null : Math.round(value);
};
const celsius = (t: string, u: UnitSystem) => {
  const value = number(t);
  return value === null ? null : u === 'us' ? ((value - 32) * 5) / 9 : value;
};

/** What was typed, in SI, for the server. */
export function inputOf(a: Answers, units: UnitSystem, requestId: string, checkOnly: boolean): NewHouseInput {
  const input = number(a.input);
  return {
    requestId,
    checkOnly,
    farmId: a.farmId || null,
    farmName: a.farmName || null,
    place: a.place || null,
    stationId: a.stationId || null,
    name: a.name,
    shape: a.shape as NewHouseInput['shape'],
    bays: whole(a.bays),
    widthM: toMetres(a.width, units) ?? 0,
    lengthM: toMetres(a.length, units) ?? 0,
    sideWallM: toMetres(a.wall, units) ?? null,
    coveringCode: a.covering || null,
    filmYear: whole(a.filmYear),
    heatedFrom: a.from || null,
    heatedTo: a.to || null,
    nightC: celsius(a.night, units),
    dayC: celsius(a.day, units),
    heaterCode: a.heater || null,
    heaterYear: whole(a.heaterYear),
    inputKw: input === null ? null : units === 'us' ? input / 3412.142 : input,
    fuel: a.fuel as NonNullable<NewHouseInput['fuel']>,
    supply: a.supply || null,
    otherUse: a.otherUse || null,
    fixedPriceUsdPerUnit: number(a.price),
    fixedUntil: a.until || null,
    unit: a.unit || usualUnit(a.fuel, units),
    usedLastWinter: number(a.used),
  };
}

/** Whether a size typed with the switch on feet looks like metres: 9 by 29 is a 30 by 96 ft house. */
export function looksLikeMetres(a: Answers, units: UnitSystem): boolean {
  const [w, l] = [number(a.width), number(a.length)];
  return units === 'us' && w !== null && l !== null && w >= 4 && w <= 13 && l >= 10 && l <= 60;
}
