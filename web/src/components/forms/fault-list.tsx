export interface FieldFault {
  field?: string | null;
  message: string;
  remedy: string;
}

/** Faults that a user can mend: what is wrong, then what would be right. */
export function FaultList({ faults }: { faults: FieldFault[] }) {
  return (
    <>
      {faults.map((f) => (
        <span key={f.message} className="fault">
          {f.message} {f.remedy}
        </span>
      ))}
    </>
  );
}
