import { useState } from 'react';
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
  const [typed, type] = useState('');
  const [reason, say] = useState('');
  if (!open) {
    return (
      <>
        <button
          className="link small"
          onClick={() => {
            type(digits(toShown(f.value, f.unit, units)).replaceAll(',', ''));
            setOpen(true);
          }}
        >
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
  return (
    <form
      onSubmit={(e) => {
        e.preventDefault();
        if (typed.trim() === '' || !Number.isFinite(Number(typed))) return;
        save(toSi(Number(typed), f.unit, units), reason);
        setOpen(false);
      }}
    >
      <label>
        <span>
          {f.title}, {shown(f.unit, units).unit || 'number'}
        </span>
        <input inputMode="decimal" value={typed} onChange={(e) => type(e.target.value)} required pattern="-?[0-9.]+" title="a number" />
      </label>
      <label>
        <span>reason: a quote, a bill, a count of one&apos;s own</span>
        <input value={reason} onChange={(e) => say(e.target.value)} required />
      </label>
      <button className="link">use it</button>{' '}
      <button className="link" type="button" onClick={() => setOpen(false)}>
        never mind
      </button>
    </form>
  );
}
