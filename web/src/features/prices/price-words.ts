import type { PriceSettingsInput, PriceSettingsQuery } from '../../lib/graphql/generated/graphql.ts';
import { unitIn, usdPerUnitIn, type UnitSystem } from '../../lib/units/format.ts';

export type Settings = NonNullable<PriceSettingsQuery['priceSettings']>;
export type Knob = Settings['knobs'][number];

/** Parameters typed and shown in per cent. */
const PERCENT = new Set(['growthPerYear', 'volatilityPerYear', 'longShare']);

export const seasonName = (year: number): string => `${String(year)}-${String((year + 1) % 100).padStart(2, '0')}`;
export const paidBack = (season: number | null | undefined): string => (season == null ? 'never' : `season ${String(season)}`);
/** With "by" before a season and without it before never. */
export const paidBackBy = (season: number | null | undefined): string => (season == null ? 'never' : `by season ${String(season)}`);
export const usd = (v: number): string => `$${v.toFixed(v < 1 ? 3 : v < 100 ? 2 : 0)}`;
export const percent = (share: number): string => `${String(Number((100 * share).toPrecision(3)))} %`;

export const unitOf = (k: Pick<Knob, 'field' | 'unit'>, u: UnitSystem): string =>
  k.field === 'longShare'
    ? '%'
    : PERCENT.has(k.field)
      ? '% a year'
      : k.unit === '1/a'
        ? 'a year'
        : k.unit.startsWith('$/')
          ? `$ a ${unitIn(k.unit.slice(2), u)}`
          : k.unit;

/** What a parameter is multiplied by to be shown: per cent, or a price a unit of the chosen system. */
const times = (k: Pick<Knob, 'field' | 'unit'>, u: UnitSystem): number =>
  PERCENT.has(k.field) ? 100 : k.unit.startsWith('$/') ? usdPerUnitIn(1, k.unit.slice(2), u) : 1;

/** A parameter as one types it. */
export const asTyped = (k: Pick<Knob, 'field' | 'unit'>, value: number | null | undefined, u: UnitSystem): string =>
  value == null ? '' : String(Number((times(k, u) * value).toPrecision(4)));

/** What is typed as the engine takes it; null = left to the default, undefined = no number. */
export function asTold(k: Pick<Knob, 'field' | 'unit'>, typed: string, u: UnitSystem): number | null | undefined {
  const text = typed.trim().replace(/[$%,\s]/g, '');
  if (text === '') return null;
  const value = Number(text);
  return Number.isFinite(value) ? value / times(k, u) : undefined;
}

export type Typed = Record<string, string>;

/** What stands typed in one system of units, in the other; what is no number stays as it stands. */
export const turnedKnobs = (knobs: readonly Pick<Knob, 'field' | 'unit'>[], typed: Typed, from: UnitSystem, to: UnitSystem): Typed =>
  Object.fromEntries(
    knobs.map((k) => {
      const text = typed[k.field] ?? '';
      const value = asTold(k, text, from);
      return [k.field, value === undefined ? text : asTyped(k, value, to)];
    }),
  );

/** The form as an input of the engine; undefined while a field holds no number. */
export function trialOf(
  fuel: PriceSettingsInput['fuel'],
  levelMeaning: PriceSettingsInput['levelMeaning'],
  knobs: readonly Pick<Knob, 'field' | 'unit' | 'own'>[],
  typed: Typed,
  u: UnitSystem,
): PriceSettingsInput | undefined {
  // a figure that nobody touched stays as it is told, not as it is rounded for its field
  const told = Object.fromEntries(
    knobs.map((k) => {
      const text = typed[k.field] ?? '';
      return [k.field, text === asTyped(k, k.own, u) ? (k.own ?? null) : asTold(k, text, u)];
    }),
  );
  return Object.values(told).includes(undefined) ? undefined : { fuel, levelMeaning, ...(told as Record<string, number | null>) };
}
