import { useState } from 'react';
import { digits, shown, toShown, toSi } from './assumption-units.ts';
import type { UnitSystem } from '../../lib/units/format.ts';

interface Props {
  label: string;
  si: number;
  unit: string;
  units: UnitSystem;
  save: (si: number) => void;
}

/** A number typed in the unit one has; it is sent when one leaves the field or presses Enter. */
export function NumberCell({ label, si, unit, units, save }: Props) {
  const text = digits(toShown(si, unit, units)).replaceAll(',', '');
  const [typed, set] = useState<string>();
  const now = typed ?? text;
  const wrong = now.trim() === '' || !Number.isFinite(Number(now));
  const send = () => {
    if (typed !== undefined && !wrong && typed !== text) save(toSi(Number(typed), unit, units));
    if (!wrong) set(undefined);
  };
  return (
    <>
      <input
        className="inline"
        aria-label={`${label}${shown(unit, units).unit === '' ? '' : `, ${shown(unit, units).unit}`}`}
        aria-invalid={wrong}
        inputMode="decimal"
        value={now}
        onChange={(e) => set(e.target.value)}
        onBlur={send}
        onKeyDown={(e) => e.key === 'Enter' && send()}
      />
      {wrong && <span className="fault second">a number, please</span>}
    </>
  );
}
