import type { HousePartsInput, HouseQuery } from '../../lib/graphql/generated/graphql.ts';
import type { UnitSystem } from '../../lib/units/format.ts';
import { turnedDegrees, turnedPerArea, turnedPower } from '../../lib/units/turned.ts';
import { typedNumber } from './save-hook.ts';

type House = NonNullable<HouseQuery['house']>;
const BTU_PER_KWH = 3412.142;
const FT2 = 0.3048 * 0.3048;

const degrees = (c: number, u: UnitSystem) => String(Math.round((u === 'us' ? c * 1.8 + 32 : c) * 10) / 10);
const celsius = (t: string, u: UnitSystem) => {
  const value = typedNumber(t) ?? Number.NaN;
  return u === 'us' ? (value - 32) / 1.8 : value;
};
const text = (value: number | null | undefined) => (value === null || value === undefined ? '' : String(Math.round(value * 1000) / 1000));

export const surfaceParts = [
  ['ROOF', 'roof'],
  ['SIDE_WALLS', 'side walls'],
  ['END_WALLS', 'end walls'],
] as const;

/** What is typed about coverings, periods, heaters, supplies and worth; text until it is saved. */
export function partsOf(house: House, units: UnitSystem) {
  const perArea = units === 'us' ? FT2 : 1;
  return {
    shape: house.shape as string,
    bays: String(house.bays),
    surfaces: surfaceParts.map(([part]) => {
      const s = house.surfaces.find((x) => x.part === part);
      return { part: part as string, code: s?.coveringCode ?? '', year: text(s?.installedYear), condition: s?.condition ?? '' };
    }),
    periods: house.ownPeriods.map((p) => ({
      from: `${String(p.fromMonth)}/${String(p.fromDay)}`,
      to: `${String(p.toMonth)}/${String(p.toDay)}`,
      night: degrees(p.nightC, units),
      day: degrees(p.dayC, units),
    })),
    heaters: house.heaters.map((h) => ({
      code: h.heaterCode,
      fuel: h.fuel as string,
      input: h.inputKw ? String(Math.round(units === 'us' ? h.inputKw * BTU_PER_KWH : h.inputKw)) : '',
      efficiency: text(h.seasonalEfficiency),
      year: text(h.installedYear),
    })),
    supplies: house.supplies.map((s) => ({ id: s.supplyGroupId, heater: String(s.heaterNo + 1), share: text(100 * s.share) })),
    installed: house.installedCodes,
    crop: text(house.cropUsdPerM2 ? house.cropUsdPerM2 * perArea : null),
    light: text(house.yieldPerLight),
    space: text(house.spaceWorth),
    shading: text(house.shadingUsdPerM2 ? house.shadingUsdPerM2 * perArea : null),
  };
}
export type TypedParts = ReturnType<typeof partsOf>;

/** What is typed of set points, inputs and worth an area, turned with the units. */
export const turnedParts = (p: TypedParts, from: UnitSystem, to: UnitSystem): TypedParts => ({
  ...p,
  periods: p.periods.map((q) => ({ ...q, night: turnedDegrees(q.night, from, to), day: turnedDegrees(q.day, from, to) })),
  heaters: p.heaters.map((h) => ({ ...h, input: turnedPower(h.input, from, to) })),
  crop: turnedPerArea(p.crop, from, to),
  shading: turnedPerArea(p.shading, from, to),
});

const monthDay = (t: string): [month: number, day: number] => {
  const [m, d] = t.split('/').map((p) => Number(p.trim()));
  return [Number.isInteger(m) ? (m ?? 0) : 0, Number.isInteger(d) ? (d ?? 0) : 0];
};
const whole = (t: string) => {
  const value = typedNumber(t);
  return value === null || Number.isNaN(value) ? null : Math.round(value);
};

/** The same in SI for the server; what was not touched is left out, so that rounding on the screen never changes a house. */
export function partsInput(p: TypedParts, was: TypedParts, units: UnitSystem): HousePartsInput {
  const perArea = units === 'us' ? FT2 : 1;
  const money = (t: string) => {
    const value = typedNumber(t);
    return value === null ? null : value / perArea;
  };
  const touched = (...keys: (keyof TypedParts)[]) => keys.some((k) => JSON.stringify(p[k]) !== JSON.stringify(was[k]));
  return {
    shape: p.shape as HousePartsInput['shape'],
    bays: whole(p.bays),
    ...(touched('surfaces') && {
      surfaces: p.surfaces
        .filter((s) => s.code)
        .map((s) => ({ part: s.part as 'ROOF', coveringCode: s.code, installedYear: whole(s.year), condition: s.condition || null })),
    }),
    ...(touched('periods') && {
      heatingPeriods: p.periods.map((q) => {
        const [from, to] = [monthDay(q.from), monthDay(q.to)];
        return {
          fromMonth: from[0],
          fromDay: from[1],
          toMonth: to[0],
          toDay: to[1],
          nightC: celsius(q.night, units),
          dayC: celsius(q.day, units),
        };
      }),
    }),
    ...(touched('heaters') && {
      heaters: p.heaters.map((h) => {
        const input = typedNumber(h.input);
        return {
          heaterCode: h.code,
          fuel: h.fuel as 'PROPANE',
          inputKw: input === null ? null : units === 'us' ? input / BTU_PER_KWH : input,
          seasonalEfficiency: typedNumber(h.efficiency),
          installedYear: whole(h.year),
        };
      }),
    }),
    ...(touched('supplies') && {
      supplies: p.supplies.map((s) => ({
        supplyGroupId: s.id,
        heaterNo: (whole(s.heater) ?? 1) - 1,
        share: (typedNumber(s.share) ?? 100) / 100,
      })),
    }),
    ...(touched('installed') && { retrofitsInstalled: p.installed }),
    ...(touched('crop', 'light', 'space', 'shading') && {
      worth: {
        cropUsdPerM2: money(p.crop),
        yieldPerLight: typedNumber(p.light),
        spaceWorth: typedNumber(p.space),
        shadingUsdPerM2: money(p.shading),
      },
    }),
  };
}
