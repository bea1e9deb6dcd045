import { Choice, Field } from '../../components/forms/field.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { SaveSupplyGroupInput } from '../../lib/graphql/generated/graphql.ts';
import { GALLON_L } from '../../lib/units/format.ts';
import { turnedFuel } from '../../lib/units/turned.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { SaveSupply } from './farm-queries.ts';
import { FormFrame } from './form-frame.tsx';
import { fuels } from './house-words.ts';
import { typedNumber, useSave } from './save-hook.ts';

export interface EditedSupply {
  id?: string;
  revision?: number;
  name: string;
  kind: string;
  fuel: string;
  tankSizeL?: number | null;
  otherUses: string[];
  baseUseKwhPerDay?: number | null;
  thermsPerCcf?: number | null;
}

/** A tank or meter: what it holds, how large it is, what else burns from it. */
export function SupplyForm({ farmId, supply, close }: { farmId: string; supply: EditedSupply; close: () => void }) {
  const { units } = useUnits();
  const perUnit = units === 'us' ? GALLON_L : 1;
  const { typed, set, was, changed } = useTyped(
    (u) => ({
      name: supply.name,
      kind: supply.kind,
      fuel: supply.fuel,
      size: supply.tankSizeL ? String(Math.round(supply.tankSizeL / (u === 'us' ? GALLON_L : 1))) : '',
      others: supply.otherUses.join(', '),
      therm: supply.thermsPerCcf?.toString() ?? '',
    }),
    (t, from) => ({ ...t, size: from === 'us' ? turnedFuel(t.size, 'gal', 'L') : turnedFuel(t.size, 'L', 'gal') }),
  );
  const save = useSave(
    async () => {
      const size = typedNumber(typed.size);
      const input: SaveSupplyGroupInput = {
        id: supply.id ?? null,
        expectedRevision: supply.revision ?? null,
        requestId: requestId(),
        farmId,
        name: typed.name,
        kind: typed.kind as SaveSupplyGroupInput['kind'],
        fuel: typed.fuel as SaveSupplyGroupInput['fuel'],
        // a size that nobody touched stays as it is told, not as it is rounded for its field
        tankSizeL: typed.size === was.size ? (supply.tankSizeL ?? null) : size === null ? null : size * perUnit,
        otherUses: typed.others.split(','),
        baseUseKwhPerDay: supply.baseUseKwhPerDay ?? null,
        thermsPerCcf: typedNumber(typed.therm),
      };
      return (await ask(SaveSupply, { input })).saveSupplyGroup;
    },
    close,
    changed,
  );
  const faults = save.data?.faults ?? [];
  const put = (key: keyof typeof typed) => (v: string) => set({ ...typed, [key]: v });
  return (
    <FormFrame
      title={supply.id ? 'Change the tank or meter' : 'Add a tank or meter'}
      button="Save it"
      faults={faults}
      shown={['name', 'fuel', 'tankSizeL', 'thermsPerCcf']}
      conflict={save.data?.conflict ?? false}
      error={save.error}
      pending={save.isPending}
      submit={() => save.mutate()}
      close={close}
    >
      <Field label="name" value={typed.name} change={put('name')} name="name" faults={faults} />
      <Choice
        label="tank or meter"
        value={typed.kind}
        change={put('kind')}
        options={[
          ['TANK', 'tank, filled by truck'],
          ['METER', 'meter, read by a utility'],
        ]}
      />
      <Choice label="fuel" value={typed.fuel} change={put('fuel')} options={fuels} name="fuel" faults={faults} />
      {typed.kind === 'TANK' && (
        <Field
          label={`size, ${units === 'us' ? 'gal' : 'L'}`}
          value={typed.size}
          change={put('size')}
          name="tankSizeL"
          faults={faults}
          number={{ grouped: true, such: '1000' }}
        />
      )}
      {typed.fuel === 'NATURAL_GAS' && (
        <Field
          label="therms a hundred cubic feet, from the bill"
          value={typed.therm}
          change={put('therm')}
          name="thermsPerCcf"
          faults={faults}
          number={{ such: '1.026' }}
        />
      )}
      <Field
        label="what else burns from it, with commas between"
        value={typed.others}
        change={put('others')}
        name="otherUses"
        faults={faults}
      />
    </FormFrame>
  );
}
