import { useState } from 'react';
import { useTyped } from '../../components/forms/typed.ts';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import type { UnitSystem } from '../../lib/units/format.ts';
import { digits, shown, toShown, toSi } from './assumption-units.ts';
import type { Figure } from './catalogue-table.tsx';

interface Props {
  figure: Figure;
  units: UnitSystem;
  save: (si: number | null, reason: string | null) => void;
}

/** Lay an own figure over the catalogue's, with its reason, or take it back. */
export function OwnFigure({ figure: f, units, save }: Props) {
  const [open, setOpen] = useState(false);
  if (!open) {
    return (
      <>
        <button className="link small" onClick={() => setOpen(true)}>
          {f.isOwn ? 'change' : 'use our own'}
          <span className="hidden"> for {f.title}</span>
        </button>{' '}
        {f.isOwn && (
          <button className="link small" onClick={() => save(null, null)}>
            back to the catalogue<span className="hidden"> for {f.title}</span>
          </button>
        )}
      </>
    );
  }
  return <OwnForm figure={f} units={units} save={save} close={() => setOpen(false)} />;
}

const asTyped = (si: number, unit: string, u: UnitSystem): string => digits(toShown(si, unit, u)).replaceAll(',', '');

function OwnForm({ figure: f, units, save, close }: Props & { close: () => void }) {
  const { typed, set, changed } = useTyped(
    (u) => ({ value: asTyped(f.value, f.unit, u), reason: '' }),
    (t, from, to) => {
      const value = t.value.trim() === '' ? Number.NaN : Number(t.value);
      return Number.isFinite(value) ? { ...t, value: asTyped(toSi(value, f.unit, from), f.unit, to) } : t;
    },
  );
  const kept = useUnsaved(changed);
  return (
    <form
      onSubmit={(e) => {
        e.preventDefault();
        if (typed.value.trim() === '' || !Number.isFinite(Number(typed.value))) return;
        save(toSi(Number(typed.value), f.unit, units), typed.reason);
        kept();
        close();
      }}
    >
      <label>
        <span>
          {f.title}, {shown(f.unit, units).unit || 'number'}
        </span>
        <input
          inputMode="decimal"
          value={typed.value}
          onChange={(e) => set({ ...typed, value: e.target.value })}
          required
          pattern="-?[0-9.]+"
          title="a number"
        />
      </label>
      <label>
        <span>reason: a quote, a bill, a count of one&apos;s own</span>
        <input value={typed.reason} onChange={(e) => set({ ...typed, reason: e.target.value })} required />
      </label>
      <button className="link">use it</button>{' '}
      <button className="link" type="button" onClick={close}>
        never mind
      </button>
    </form>
  );
}
