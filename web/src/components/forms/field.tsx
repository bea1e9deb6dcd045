import type { ReactNode } from 'react';
import { type FieldFault, FaultList } from './fault-list.tsx';

/** A typed answer with the faults that concern it under it. */
export function Field(props: {
  label: string;
  value: string;
  change: (value: string) => void;
  name: string;
  faults: FieldFault[];
  hint?: ReactNode;
  type?: string;
}) {
  const wrong = props.faults.filter((f) => f.field === props.name);
  return (
    <label>
      <span>{props.label}</span>
      <input
        type={props.type ?? 'text'}
        value={props.value}
        aria-invalid={wrong.length > 0}
        onChange={(e) => props.change(e.target.value)}
      />
      {props.hint && <span className="caption">{props.hint}</span>}
      <FaultList faults={wrong} />
    </label>
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
