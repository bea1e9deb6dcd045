import { useState } from 'react';
import { Choice, Field } from '../../components/forms/field.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { SaveContractInput, SupplyQuery } from '../../lib/graphql/generated/graphql.ts';
import { SaveContract } from './farm-queries.ts';
import { FormFrame } from './form-frame.tsx';
import { fuelUnits } from './house-words.ts';
import { typedNumber, useSave } from './save-hook.ts';

type Supply = NonNullable<SupplyQuery['supplyGroup']>;

const kinds = [
  ['INDEXED', 'monthly index and an adder'],
  ['FIXED', 'one price for the term'],
] as const;

/** How a tank or meter pays for its fuel. */
export function ContractForm({ supply, close }: { supply: Supply; close: () => void }) {
  const c = supply.contract;
  const [typed, set] = useState({
    kind: c?.kind ?? 'INDEXED',
    unit: c?.unit ?? fuelUnits[supply.fuel]?.[0] ?? 'kWh',
    price: c?.priceUsdPerUnit?.toString() ?? '',
    adder: c?.adderUsdPerUnit?.toString() ?? '',
    from: c?.startsOn ?? '',
    to: c?.endsOn ?? '',
    fee: c?.monthlyFeeUsd?.toString() ?? '',
    rent: c?.tankRentUsdPerYear?.toString() ?? '',
  });
  const save = useSave(async () => {
    const input: SaveContractInput = {
      id: c?.id ?? null,
      expectedRevision: c?.revision ?? null,
      requestId: requestId(),
      supplyGroupId: supply.id,
      kind: typed.kind as SaveContractInput['kind'],
      unit: typed.unit,
      priceUsdPerUnit: typed.kind === 'FIXED' ? typedNumber(typed.price) : null,
      adderUsdPerUnit: typed.kind === 'INDEXED' ? typedNumber(typed.adder) : null,
      startsOn: typed.from || null,
      endsOn: typed.to || null,
      monthlyFeeUsd: typedNumber(typed.fee),
      tankRentUsdPerYear: typedNumber(typed.rent),
    };
    return (await ask(SaveContract, { input })).saveContract;
  }, close);
  const faults = save.data?.faults ?? [];
  const field = (key: keyof typeof typed, label: string, name: string, type?: string) => (
    <Field label={label} value={typed[key]} change={(v) => set({ ...typed, [key]: v })} name={name} faults={faults} type={type} />
  );
  return (
    <FormFrame
      title="Change the contract"
      button="Save the contract"
      faults={faults}
      shown={['unit', 'priceUsdPerUnit', 'adderUsdPerUnit', 'startsOn', 'endsOn', 'monthlyFeeUsd', 'tankRentUsdPerYear']}
      conflict={save.data?.conflict ?? false}
      error={save.error}
      pending={save.isPending}
      submit={() => save.mutate()}
      close={close}
    >
      <Choice
        label="how it pays"
        value={typed.kind}
        change={(v) => set({ ...typed, kind: v as typeof typed.kind })}
        options={kinds.some(([k]) => k === typed.kind) ? kinds : [...kinds, [typed.kind, typed.kind.toLowerCase()]]}
      />
      <Choice
        label="prices are dollars a"
        value={typed.unit}
        change={(v) => set({ ...typed, unit: v })}
        options={(fuelUnits[supply.fuel] ?? []).map((u) => [u, u] as const)}
        name="unit"
        faults={faults}
      />
      {typed.kind === 'FIXED' && field('price', `price, $ a ${typed.unit}`, 'priceUsdPerUnit')}
      {typed.kind === 'INDEXED' && field('adder', `added to the index, $ a ${typed.unit} (empty: the default)`, 'adderUsdPerUnit')}
      {field('from', 'first day', 'startsOn', 'date')}
      {field('to', 'last day; then the monthly index', 'endsOn', 'date')}
      {field('fee', 'charge a month, $', 'monthlyFeeUsd')}
      {supply.kind === 'TANK' && field('rent', 'tank rent a year, $', 'tankRentUsdPerYear')}
    </FormFrame>
  );
}
