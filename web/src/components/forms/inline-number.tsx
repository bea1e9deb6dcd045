import { useId, useState } from 'react';
import { type Expected, readNumber } from '../../lib/units/typed-number.ts';

interface Props {
  label: string;
  value: number;
  expected: Expected;
  save: (value: number) => void;
}

/** A figure one can change inside its sentence; it is taken when one leaves it or presses Enter, and only when it can be right. */
export function InlineNumber({ label, value, expected, save }: Props) {
  const id = useId();
  const shown = value.toLocaleString('en-US', { maximumFractionDigits: 6 });
  const [typed, set] = useState<string>();
  const [was, setWas] = useState(value);
  if (was !== value) {
    setWas(value);
    set(undefined);
  }
  const read = readNumber(typed ?? shown, expected);
  const fault = read.value === null ? `Empty. Give a figure such as ${shown}, or press Escape to keep it.` : read.fault;
  const send = () => {
    if (typed === undefined || fault !== undefined || read.value === null) return;
    if (read.value !== value) save(read.value);
    else set(undefined);
  };
  return (
    <>
      <input
        className="inline"
        style={{ width: `calc(${String(Math.max(2, (typed ?? shown).length))}ch + 12px)` }}
        aria-label={label}
        aria-invalid={fault !== undefined}
        aria-describedby={fault === undefined ? undefined : id}
        inputMode="decimal"
        value={typed ?? shown}
        onChange={(e) => set(e.target.value)}
        onBlur={send}
        onKeyDown={(e) => {
          if (e.key === 'Enter') send();
          if (e.key === 'Escape') set(undefined);
        }}
      />
      <span id={id} className="fault small" aria-live="polite">
        {fault !== undefined && ` ${fault} `}
      </span>
    </>
  );
}
