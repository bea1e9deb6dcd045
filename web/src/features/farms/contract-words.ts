import type { SupplyQuery } from '../../lib/graphql/generated/graphql.ts';
import { counted } from '../../lib/units/format.ts';

export type Supply = NonNullable<SupplyQuery['supplyGroup']>;
export type Contract = Supply['contracts'][number];

export const contractKinds = [
  ['INDEXED', 'monthly index'],
  ['FIXED', 'one price for the term'],
  ['CAPPED', 'index, never over a cap'],
  ['COLLARED', 'index between a floor and a cap'],
  ['PRE_BOUGHT', 'a block bought before the season'],
] as const;

export const leftoverRules = [
  ['LOST', 'lost'],
  ['CARRIED_AT_OLD_PRICE', 'carried on at the price paid'],
  ['CARRIED_AT_NEW_PRICE', 'its money buys fuel at the price of the day'],
  ['BILLED_TO_SHARE', 'taken back, a share is billed'],
] as const;

const usd = (v: number) => `$${v < 1 ? v.toFixed(3) : v.toFixed(2)}`;

/** A contract in one sentence. */
export function contractWords(c: Contract, unit = c.unit): string {
  const index = `${c.indexShare ? `${String(c.indexShare)} x the index` : 'the monthly index'}${c.adderUsdPerUnit ? ` plus ${usd(c.adderUsdPerUnit)} a ${unit}` : ''}${c.scatterUsdPerUnit ? `, give or take ${usd(c.scatterUsdPerUnit)}` : ''}`;
  const over = c.overIndexUsdPerUnit;
  const price =
    over != null ? `the index of July plus ${usd(over)} a ${unit}, agreed anew each season` : `${usd(c.priceUsdPerUnit ?? 0)} a ${unit}`;
  const cap = over != null ? `the index of July plus ${usd(over)}` : usd(c.capUsdPerUnit ?? 0);
  const main =
    c.kind === 'FIXED'
      ? price
      : c.kind === 'CAPPED'
        ? `${index}, never over ${cap} a ${unit}`
        : c.kind === 'COLLARED'
          ? `${index}, between ${usd(c.floorUsdPerUnit ?? 0)} and ${cap} a ${unit}`
          : c.kind === 'PRE_BOUGHT'
            ? `${(c.blockUnits ?? 0).toLocaleString('en-US')} ${unit} bought ahead at ${price}; what is left: ${leftoverRules.find(([k]) => k === (c.leftover ?? 'LOST'))?.[1] ?? 'lost'}; more than that pays ${index}`
            : index;
  return [
    main,
    c.volumeShare && `on ${String(Math.round(100 * c.volumeShare))} % of the volume`,
    c.kind !== 'PRE_BOUGHT' && c.blockUnits && `for the first ${c.blockUnits.toLocaleString('en-US')} ${unit} of a season`,
    c.minimumTakeUnits && `at least ${c.minimumTakeUnits.toLocaleString('en-US')} ${unit} a season`,
    ...c.tiers.map((t) => `${usd(t.adderUsdPerUnit)} more a ${unit} over ${String(t.fromUnits)} ${unit} a month`),
    c.startsOn && `from ${c.startsOn}`,
    c.endsOn && `until ${c.endsOn}, then ${c.rollsIntoContractId ? 'the contract it rolls into' : 'the monthly index'}`,
    c.seasonFeeUsd && `$${String(c.seasonFeeUsd)} a season`,
    c.monthlyFeeUsd && `$${String(c.monthlyFeeUsd)} a month`,
    c.deliveryFeeUsd && `$${String(c.deliveryFeeUsd)} a delivery`,
    c.tankRentUsdPerYear && `$${String(c.tankRentUsdPerYear)} a year for the tank`,
    c.demandUsdPerKw && `$${String(c.demandUsdPerKw)} a kW of the month's peak`,
    c.interruptedDays && `cut on ${counted(c.interruptedDays, 'day')} a season`,
  ]
    .filter(Boolean)
    .join('; ');
}
