import { chosenFirst } from '../../lib/units/told.ts';
import { useUnits } from '../../lib/units/units-context.tsx';

export interface FieldFault {
  field?: string | null;
  message: string;
  remedy: string;
}

/** Faults that a user can mend: what is wrong, then what would be right. */
export function FaultList({ faults }: { faults: FieldFault[] }) {
  const { units } = useUnits();
  return (
    <>
      {faults.map((f) => (
        <span key={f.message} className="fault">
          {chosenFirst(f.message, units)} {chosenFirst(f.remedy, units)}
        </span>
      ))}
    </>
  );
}
