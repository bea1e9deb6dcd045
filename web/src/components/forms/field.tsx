import { useEffect, useId, useRef, type ReactNode } from 'react';
import { type Expected, readNumber } from '../../lib/units/typed-number.ts';
import { type FieldFault, FaultList } from './fault-list.tsx';

/** A typed answer with the faults that concern it under it. One that takes a number says at once what is wrong with it, and its form is not sent before it is mended. */
export function Field(props: {
  label: string;
  value: string;
  change: (value: string) => void;
  name: string;
  faults: FieldFault[];
  hint?: ReactNode;
  type?: string;
  number?: Expected | true;
  required?: boolean;
}) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const typed = props.number ? readNumber(props.value, props.number === true ? {} : props.number).fault : undefined;
  useEffect(() => input.current?.setCustomValidity(typed ?? ''), [typed]);
  const wrong = typed === undefined ? props.faults.filter((f) => f.field === props.name) : [];
  const told = [...(props.hint ? [`${id}-hint`] : []), ...(typed || wrong.length > 0 ? [`${id}-fault`] : [])].join(' ');
  return (
    <div className="field">
      <label>
        <span>{props.label}</span>
        <input
          ref={input}
          type={props.type ?? 'text'}
          inputMode={props.number ? 'decimal' : undefined}
          value={props.value}
          required={props.required}
          aria-invalid={typed !== undefined || wrong.length > 0}
          aria-describedby={told || undefined}
          onChange={(e) => props.change(e.target.value)}
        />
      </label>
      {props.hint && (
        <span id={`${id}-hint`} className="small quiet">
          {props.hint}
        </span>
      )}
      <span id={`${id}-fault`} className="small" aria-live="polite">
        {typed !== undefined && <span className="fault">{typed}</span>}
        <FaultList faults={wrong} />
      </span>
    </div>
  );
}

/** A choice among few; an empty value stands for "not known". */
export function Choice(props: {
  label: string;
  value: string;
  change: (value: string) => void;
  options: readonly (readonly [value: string, label: string])[];
  name?: string;
  faults?: FieldFault[];
}) {
  return (
    <label>
      <span>{props.label}</span>
      <select value={props.value} onChange={(e) => props.change(e.target.value)}>
        {props.options.map(([value, label]) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
      <FaultList faults={(props.faults ?? []).filter((f) => f.field === props.name)} />
    </label>
  );
}
