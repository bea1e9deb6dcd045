import { Choice, Field } from '../../components/forms/field.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { FarmQuery } from '../../lib/graphql/generated/graphql.ts';
import { SaveFarm } from './farm-queries.ts';
import { FormFrame } from './form-frame.tsx';
import { type MembershipTyped, MembershipFields, membershipInput, membershipTyped } from './membership-fields.tsx';
import { typedNumber, useSave } from './save-hook.ts';

type Farm = NonNullable<FarmQuery['farm']>;

type Coop = Pick<FarmQuery['coop'], 'weatherStations' | 'relatedKeys' | 'groupsInUse'>;

/** Name, place, station and money of a farm, and what rounds ask of it. */
export function FarmForm({ farm, coop, close }: { farm: Farm; coop: Coop; close: () => void }) {
  const member = useTyped<MembershipTyped>(() => membershipTyped(farm));
  const { typed, set, changed } = useTyped(() => ({
    name: farm.name,
    place: farm.place ?? '',
    station: farm.stationId ?? '',
    sales: farm.salesUsd?.toString() ?? '',
    wage: farm.wageUsdPerHour?.toString() ?? '',
    power: farm.electricityUsdPerKwh?.toString() ?? '',
  }));
  const save = useSave(
    async () => {
      const input = {
        id: farm.id,
        expectedRevision: farm.revision,
        requestId: requestId(),
        name: typed.name,
        place: typed.place || null,
        stationId: typed.station || null,
        salesUsd: typedNumber(typed.sales),
        wageUsdPerHour: typedNumber(typed.wage),
        electricityUsdPerKwh: typedNumber(typed.power),
        membership: membershipInput(member.typed),
      };
      return (await ask(SaveFarm, { input })).saveFarm;
    },
    close,
    changed || member.changed,
  );
  const faults = save.data?.faults ?? [];
  const field = (key: keyof typeof typed, label: string, name: string) => (
    <Field
      label={label}
      value={typed[key]}
      change={(v) => set({ ...typed, [key]: v })}
      name={name}
      faults={faults}
      number={name === 'salesUsd' ? { grouped: true, such: '250000' } : name !== 'name' && name !== 'place' ? true : undefined}
    />
  );
  return (
    <FormFrame
      title="Change the farm"
      button="Save the farm"
      faults={faults}
      shown={['name', 'salesUsd', 'wageUsdPerHour', 'electricityUsdPerKwh', 'relatedKey', 'memberSinceOn', 'groups']}
      conflict={save.data?.conflict ?? false}
      error={save.error}
      pending={save.isPending}
      submit={() => save.mutate()}
      close={close}
    >
      {field('name', 'name', 'name')}
      {field('place', 'place', 'place')}
      <Choice
        label="weather station"
        value={typed.station}
        change={(v) => set({ ...typed, station: v })}
        options={[['', 'not chosen yet'], ...coop.weatherStations.map((s) => [s.id, s.markedName] as const)]}
      />
      {field('sales', 'sales of a year, $', 'salesUsd')}
      {field('wage', 'wage for watching, $ an hour (empty: the study’s)', 'wageUsdPerHour')}
      {field('power', 'electricity, $ a kWh (empty: the study’s)', 'electricityUsdPerKwh')}
      <MembershipFields typed={member.typed} set={member.set} keys={coop.relatedKeys} groups={coop.groupsInUse} faults={faults} />
    </FormFrame>
  );
}
