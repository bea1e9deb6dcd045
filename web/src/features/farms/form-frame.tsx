import { LeaveForm } from '../../components/forms/ways-out.tsx';
import type { ReactNode } from 'react';
import { type FieldFault, FaultList } from '../../components/forms/fault-list.tsx';
import { CONFLICT } from './save-hook.ts';

/** A form with its title, its button, and whatever the server says that no field shows. */
export function FormFrame(props: {
  title: string;
  button: string;
  faults: FieldFault[];
  shown: readonly string[];
  conflict: boolean;
  error: Error | null;
  pending: boolean;
  submit: () => void;
  close: () => void;
  children: ReactNode;
}) {
  return (
    <form
      aria-label={props.title}
      onSubmit={(e) => {
        e.preventDefault();
        props.submit();
      }}
    >
      <h2>{props.title}</h2>
      <div className="form">{props.children}</div>
      {props.conflict && <p className="fault">{CONFLICT}</p>}
      <FaultList faults={props.faults.filter((f) => !f.field || !props.shown.includes(f.field))} />
      {props.error && <p className="fault">{props.error.message}</p>}
      <button className="filled" type="submit" disabled={props.pending}>
        {props.button}
      </button>{' '}
      <LeaveForm conflict={props.conflict} close={props.close} />
    </form>
  );
}
