import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { Field } from '../../components/forms/field.tsx';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { Lacking } from '../../components/forms/lacking.tsx';
import { type Expected, readNumber } from '../../lib/units/typed-number.ts';
import { LeaveForm } from '../../components/forms/ways-out.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { BillsFragment, FuelEntryInput, ReadKind } from '../../lib/graphql/generated/graphql.ts';
import { counted, type Fuel, type UnitSystem } from '../../lib/units/format.ts';
import { BillsEntries, type Entry } from './bills-entries.tsx';
import { SaveFuelRecord } from './bills-queries.ts';
import { BillsVerdict } from './bills-verdict.tsx';
import { usualUnit } from './house-words.ts';
import { CONFLICT, typedNumber } from './save-hook.ts';

/** Figures of a line; a credit note may be negative. */
const limits: Record<string, Expected> = {
  quantity: { such: '412.5' },
  total: { such: '890.25' },
  gauge: { least: 0, most: 100, such: '80' },
  factor: { least: 0.7, most: 1.3, such: '1.026' },
};

const asInput = (e: Entry): FuelEntryInput => ({
  kind: e.kind,
  fromOn: e.fromOn,
  toOn: e.toOn,
  quantity: e.onlyDollars ? null : e.quantity,
  unit: e.unit,
  totalUsd: e.totalUsd ?? null,
  priceUsdPerUnit: e.priceUsdPerUnit ?? null,
  feesUsd: e.feesUsd ?? null,
  read: e.read,
  gaugeBeforePct: e.gaugeBeforePct ?? null,
  gaugeAfterPct: e.gaugeAfterPct ?? null,
  thermsPerCcf: e.thermsPerCcf ?? null,
  confirmed: e.confirmed,
  issuedOn: e.issuedOn ?? null,
  note: e.note ?? null,
  takenOut: e.takenOut ?? null,
  spreadShare: e.spreadShare ?? null,
});

/** Lines of the record: add one, answer what is asked, take one out; every change is looked at before it is saved. */
export function BillsForm({
  supplyId,
  kind,
  fuel,
  bills,
  units,
  close,
}: {
  supplyId: string;
  kind: string;
  fuel: Fuel;
  bills: BillsFragment;
  units: UnitSystem;
  close: () => void;
}) {
  const tank = kind === 'TANK';
  const [lines, setLines] = useState<FuelEntryInput[]>(bills.entries.map(asInput));
  const [automatic, setAutomatic] = useState(bills.automaticDelivery ?? false);
  const usual = bills.entries[0]?.unit ?? usualUnit(fuel, units);
  const [typed, set] = useState({
    from: '',
    to: '',
    quantity: '',
    unit: usual,
    read: tank ? 'FULL' : 'ACTUAL',
    total: '',
    gauge: '',
    factor: '',
  });
  const [asRead] = useState(JSON.stringify([lines, automatic]));
  const begun = [typed.quantity, typed.total, typed.gauge, typed.factor, typed.to].some((t) => t !== '');
  const kept = useUnsaved(begun || JSON.stringify([lines, automatic]) !== asRead);
  const queries = useQueryClient();
  const run = useMutation({
    mutationFn: (checkOnly: boolean) =>
      ask(SaveFuelRecord, {
        input: {
          supplyGroupId: supplyId,
          expectedRevision: bills.revision ?? null,
          requestId: requestId(),
          checkOnly,
          automaticDelivery: automatic,
          entries: lines,
        },
      }),
    onSuccess: async (d) => {
      if (d.saveFuelRecord.changeId) {
        kept();
        await queries.invalidateQueries();
        close();
      }
    },
  });
  useEffect(() => {
    run.mutate(true);
    // looked at when the lines change, not when the mutation object does
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [lines, automatic]);
  const shown = run.data?.saveFuelRecord.preview ?? bills;
  const same = (e: Entry) => (l: FuelEntryInput) =>
    l.kind === e.kind && l.fromOn === e.fromOn && l.toOn === e.toOn && (l.quantity ?? 0) === e.quantity;
  const change = (no: number, part: (l: FuelEntryInput) => Partial<FuelEntryInput>) => {
    const entry = shown.entries.find((e) => e.no === no);
    if (!entry) return;
    const twins = shown.entries.filter((e) => e.no < no && same(e)(asInput(entry))).length;
    let seen = 0;
    setLines(lines.map((l) => (same(entry)(l) && seen++ === twins ? { ...l, ...part(l) } : l)));
  };
  const byVolume = fuel === 'NATURAL_GAS' && ['ccf', 'mcf', 'm3'].includes(typed.unit.trim().toLowerCase());
  const add = () => {
    const quantity = typedNumber(typed.quantity);
    setLines([
      ...lines,
      {
        kind: tank ? 'DELIVERY' : 'BILL',
        fromOn: tank ? typed.to : typed.from || typed.to,
        toOn: typed.to,
        quantity: quantity !== null && Number.isFinite(quantity) ? quantity : null,
        unit: typed.unit,
        totalUsd: typedNumber(typed.total),
        read: typed.read as ReadKind,
        gaugeAfterPct: typedNumber(typed.gauge),
        thermsPerCcf: byVolume ? typedNumber(typed.factor) : null,
      } as FuelEntryInput,
    ]);
    set({ ...typed, from: typed.to, to: '', quantity: '', total: '', gauge: '', factor: '' });
  };
  const wrong = Object.entries(limits).some(([key, l]) => readNumber(typed[key as keyof typeof typed], l).fault !== undefined);
  const field = (key: keyof typeof typed, label: string, type = 'text') => (
    <Field
      label={label}
      value={typed[key]}
      change={(v) => set({ ...typed, [key]: v })}
      name={key}
      faults={[]}
      type={type}
      number={limits[key]}
    />
  );
  return (
    <section aria-label="change tickets and bills">
      <h2>{tank ? 'Tickets' : 'Bills'}, line by line</h2>
      <BillsVerdict bills={shown} fuel={fuel} />
      <div className="form">
        {!tank && field('from', 'first day', 'date')}
        {field('to', tank ? 'day of the delivery' : 'day of the read', 'date')}
        {field('quantity', 'quantity')}
        {field('unit', 'unit')}
        {byVolume && field('factor', 'therm factor of this bill, therms a Ccf')}
        <label>
          <span>{tank ? 'fill' : 'read'}</span>
          <select value={typed.read} onChange={(e) => set({ ...typed, read: e.target.value })}>
            {(tank ? ['FULL', 'PART', 'UNKNOWN'] : ['ACTUAL', 'ESTIMATED', 'CUSTOMER']).map((k) => (
              <option key={k} value={k}>
                {k.toLowerCase()}
              </option>
            ))}
          </select>
        </label>
        {tank && field('gauge', 'gauge after, %')}
        {field('total', 'total, $')}
      </div>
      <p>
        <button
          type="button"
          className="link"
          aria-describedby="line-lacks"
          disabled={!typed.to || wrong || (!typed.quantity.trim() && !typed.total.trim())}
          onClick={add}
        >
          add the line
        </button>{' '}
        <Lacking
          id="line-lacks"
          what={[
            !typed.to && `the ${tank ? 'day of the delivery' : 'day of the read'}`,
            !typed.quantity.trim() && !typed.total.trim() && 'a quantity or a total',
            wrong && 'a figure that can be right',
          ]}
        />
      </p>
      {tank && (
        <label style={{ display: 'flex', gap: 8 }}>
          <input type="checkbox" style={{ width: 'auto' }} checked={automatic} onChange={(e) => setAutomatic(e.target.checked)} />
          <span>the supplier fills on his own schedule: a fill that does not say is full</span>
        </label>
      )}
      <BillsEntries
        entries={shown.entries}
        confirm={(no) => change(no, () => ({ confirmed: true }))}
        takeOut={(no, reason) => change(no, () => ({ takenOut: reason }))}
        changeFactor={fuel === 'NATURAL_GAS' ? (no, factor) => change(no, () => ({ thermsPerCcf: factor })) : undefined}
      />
      {run.data?.saveFuelRecord.conflict && <p className="fault">{CONFLICT}</p>}
      {run.data?.saveFuelRecord.faults.map((f, i) => (
        <p key={i} className="fault">
          {f.message} {f.remedy}
        </p>
      ))}
      {run.error && <p className="fault">{run.error.message}</p>}
      <button className="filled" disabled={run.isPending} onClick={() => run.mutate(false)}>
        Save {counted(lines.length, 'line')}
      </button>{' '}
      <LeaveForm conflict={run.data?.saveFuelRecord.conflict} close={close} />
    </section>
  );
}
