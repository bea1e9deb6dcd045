/** Beside a button that cannot be pressed yet: what is still lacking; nothing where nothing is. */
export function Lacking({ id, what }: { id?: string; what: readonly (string | false)[] }) {
  const lacks = what.filter((w): w is string => w !== false);
  return (
    <span id={id} className="small quiet lacking" role="status">
      {lacks.length > 0 && `Still lacking: ${lacks.join(', ')}.`}
    </span>
  );
}
