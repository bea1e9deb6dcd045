import type { PriceSettingsInput, PriceSettingsQuery } from '../../lib/graphql/generated/graphql.ts';

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

export const unitOf = (k: Knob): string =>
  k.field === 'longShare' ? '%' : PERCENT.has(k.field) ? '% a year' : k.unit === '1/a' ? 'a year' : k.unit.replace('$/', '$ a ');

/** A parameter as one types it. */
export const asTyped = (field: string, value: number | null | undefined): string =>
  value == null ? '' : String(Number((PERCENT.has(field) ? 100 * value : value).toPrecision(4)));

/** What is typed as the engine takes it; null = left to the default, undefined = no number. */
export function asTold(field: string, typed: string): number | null | undefined {
  const text = typed.trim().replace(/[$%,\s]/g, '');
  if (text === '') return null;
  const value = Number(text);
  return Number.isFinite(value) ? (PERCENT.has(field) ? value / 100 : value) : undefined;
}

export type Typed = Record<string, string>;

/** The form as an input of the engine; undefined while a field holds no number. */
export function trialOf(
  fuel: PriceSettingsInput['fuel'],
  levelMeaning: PriceSettingsInput['levelMeaning'],
  typed: Typed,
): PriceSettingsInput | undefined {
  const told = Object.fromEntries(Object.entries(typed).map(([field, text]) => [field, asTold(field, text)]));
  return Object.values(told).includes(undefined) ? undefined : { fuel, levelMeaning, ...(told as Record<string, number | null>) };
}
