import { Choice, Field } from '../../components/forms/field.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { SaveContractInput } from '../../lib/graphql/generated/graphql.ts';
import { contractKinds, leftoverRules, type Contract, type Supply } from './contract-words.ts';
import { SaveContract } from './farm-queries.ts';
import { FormFrame } from './form-frame.tsx';
import { fuelUnits, usualUnit } from './house-words.ts';
import { typedNumber, useSave } from './save-hook.ts';

const numbers = [
  'priceUsdPerUnit',
  'overIndexUsdPerUnit',
  'capUsdPerUnit',
  'floorUsdPerUnit',
  'adderUsdPerUnit',
  'indexShare',
  'scatterUsdPerUnit',
  'blockUnits',
  'blockPaidMonth',
  'minimumTakeUnits',
  'monthlyFeeUsd',
  'seasonFeeUsd',
  'deliveryFeeUsd',
  'unitsPerDelivery',
  'tankRentUsdPerYear',
  'demandUsdPerKw',
  'loadFactor',
  'interruptedDays',
] as const;
type Figure = (typeof numbers)[number];

/** Fields that take a number. */
const figures = new Set<string>([...numbers, 'billedShare', 'volumeShare', 'stepFrom', 'stepAdder']);

const percent = (share?: number | null) => (share == null ? '' : String(Math.round(1000 * share) / 10));
const share = (typed: string) => {
  const value = typedNumber(typed);
  return value == null ? null : value / 100;
};

/** How a tank or meter pays for its fuel, or what it was offered: only the fields of the kind chosen. */
export function ContractForm({
  supply,
  contract: c,
  offered,
  start,
  close,
}: {
  supply: Supply;
  contract?: Contract;
  offered: boolean;
  /** Figures to begin with, over those of the contract. */
  start?: Partial<Record<Figure | 'kind' | 'unit', string>>;
  close: () => void;
}) {
  const { typed, set, changed } = useTyped((units) => ({
    ...(Object.fromEntries(numbers.map((n) => [n, c?.[n]?.toString() ?? ''])) as Record<Figure, string>),
    name: c?.name ?? '',
    kind: c?.kind ?? 'INDEXED',
    unit: c?.unit ?? usualUnit(supply.fuel, units),
    leftover: c?.leftover ?? 'LOST',
    billedShare: percent(c?.billedShare),
    volumeShare: percent(c?.volumeShare),
    stepFrom: c?.tiers[0]?.fromUnits.toString() ?? '',
    stepAdder: c?.tiers[0]?.adderUsdPerUnit.toString() ?? '',
    startsOn: c?.startsOn ?? '',
    endsOn: c?.endsOn ?? '',
    rollsIntoContractId: c?.rollsIntoContractId ?? '',
    priceSeriesId: c?.priceSeriesId ?? '',
    ...start,
  }));
  const save = useSave(
    async () => {
      const [from, adder] = [typedNumber(typed.stepFrom), typedNumber(typed.stepAdder)];
      const input: SaveContractInput = {
        ...(Object.fromEntries(numbers.map((n) => [n, typedNumber(typed[n])])) as Record<Figure, number | null>),
        id: c?.id ?? null,
        expectedRevision: c?.revision ?? null,
        requestId: requestId(),
        supplyGroupId: supply.id,
        standing: offered ? 'OFFERED' : 'IN_FORCE',
        name: typed.name || null,
        kind: typed.kind as SaveContractInput['kind'],
        unit: typed.unit,
        leftover: typed.leftover as SaveContractInput['leftover'],
        billedShare: share(typed.billedShare),
        volumeShare: share(typed.volumeShare),
        tiers: from != null && adder != null ? [{ fromUnits: from, adderUsdPerUnit: adder }, ...(c?.tiers.slice(1) ?? [])] : [],
        startsOn: typed.startsOn || null,
        endsOn: typed.endsOn || null,
        rollsIntoContractId: typed.rollsIntoContractId || null,
        priceSeriesId: typed.priceSeriesId || null,
      };
      return (await ask(SaveContract, { input })).saveContract;
    },
    close,
    changed,
  );
  const faults = save.data?.faults ?? [];
  const field = (key: keyof typeof typed, label: string, type?: string) => (
    <Field
      label={label}
      value={typed[key]}
      change={(v) => set({ ...typed, [key]: v })}
      name={key}
      faults={faults}
      type={type}
      number={figures.has(key) || undefined}
    />
  );
  const choice = (key: keyof typeof typed, label: string, options: readonly (readonly [string, string])[]) => (
    <Choice label={label} value={typed[key]} change={(v) => set({ ...typed, [key]: v })} options={options} name={key} faults={faults} />
  );
  const { kind, unit } = typed;
  const per = `$ a ${unit}`;
  const held = kind === 'CAPPED' || kind === 'COLLARED';
  const priced = kind === 'FIXED' || kind === 'PRE_BOUGHT';
  return (
    <FormFrame
      title={offered ? (c ? 'Change the offer' : 'An offer to compare') : c ? 'Change the contract' : 'A new contract'}
      button={offered ? 'Save the offer' : 'Save the contract'}
      faults={faults}
      shown={[
        ...numbers,
        'unit',
        'leftover',
        'billedShare',
        'volumeShare',
        'tiers',
        'startsOn',
        'endsOn',
        'rollsIntoContractId',
        'priceSeriesId',
      ]}
      conflict={save.data?.conflict ?? false}
      error={save.error}
      pending={save.isPending}
      submit={() => save.mutate()}
      close={close}
    >
      {field('name', 'what you call it')}
      {choice('kind', 'how it pays', contractKinds)}
      {choice(
        'unit',
        'prices are dollars a',
        (fuelUnits[supply.fuel] ?? []).map((u) => [u, u] as const),
      )}
      {priced && field('priceUsdPerUnit', `price, ${per}`)}
      {held && field('capUsdPerUnit', `cap, ${per}`)}
      {kind === 'COLLARED' && field('floorUsdPerUnit', `floor, ${per}`)}
      {supply.seriesChoices.length > 1 &&
        choice('priceSeriesId', 'the index it follows', [
          ['', 'the one of the assumptions'],
          ...supply.seriesChoices.map((s) => [s.id, s.name] as const),
        ])}
      {kind !== 'INDEXED' && field('overIndexUsdPerUnit', `or agreed anew each July: ${per} over the index of that month`)}
      {!priced && field('adderUsdPerUnit', `added to the index, ${per} (empty: 0)`)}
      {!priced && field('indexShare', 'times the index (empty: 1)')}
      {!priced && field('scatterUsdPerUnit', `give or take, ${per}, drawn once a season (empty: 0)`)}
      {kind !== 'INDEXED' &&
        field(
          'blockUnits',
          kind === 'PRE_BOUGHT' ? `block bought ahead, ${unit} a season` : `holds for the first ${unit} of a season (empty: all)`,
        )}
      {kind === 'PRE_BOUGHT' && field('blockPaidMonth', 'month in which it is paid, 1 to 12 (empty: July)')}
      {kind === 'PRE_BOUGHT' && choice('leftover', 'what is left in June is', leftoverRules)}
      {kind === 'PRE_BOUGHT' && typed.leftover === 'BILLED_TO_SHARE' && field('billedShare', 'share of it that is billed, %')}
      {field('volumeShare', 'share of the volume, % (empty: all)')}
      {field('minimumTakeUnits', `least ${unit} a season; what is short is billed`)}
      {field('seasonFeeUsd', 'fee a season, such as the price of a cap, $')}
      {field('monthlyFeeUsd', 'charge a month, $')}
      {supply.kind === 'TANK' && field('deliveryFeeUsd', 'charge a delivery, $')}
      {supply.kind === 'TANK' && field('unitsPerDelivery', `${unit} a delivery`)}
      {supply.kind === 'TANK' && field('tankRentUsdPerYear', 'tank rent a year, $')}
      {supply.kind === 'METER' && field('stepFrom', `over this many ${unit} a month`)}
      {supply.kind === 'METER' && field('stepAdder', `the price changes by, ${per}`)}
      {supply.fuel === 'ELECTRICITY' && field('demandUsdPerKw', "demand charge, $ a kW of the month's peak")}
      {supply.fuel === 'ELECTRICITY' && field('loadFactor', 'mean over peak load (empty: 0.3)')}
      {supply.fuel === 'NATURAL_GAS' && field('interruptedDays', 'days a season without supply')}
      {field('startsOn', 'first day', 'date')}
      {field('endsOn', 'last day', 'date')}
      {choice('rollsIntoContractId', 'then it rolls into', [
        ['', 'the monthly index'],
        ...(c ? [[c.id, 'itself, on the same terms'] as const] : []),
        ...supply.contracts.filter((o) => o.id !== c?.id).map((o) => [o.id, o.name ?? 'another contract'] as const),
      ])}
    </FormFrame>
  );
}
