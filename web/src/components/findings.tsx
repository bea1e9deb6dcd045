interface Finding {
  code: string;
  words: string;
}

/** What a price record says and what it cannot, a sentence a line; folded to the first where the record is not in use. */
export function Findings({ findings, open }: { findings: readonly Finding[]; open: boolean }) {
  const [first, ...rest] = findings;
  if (!first) return null;
  const lines = (of: readonly Finding[]) => (
    <ul className="small">
      {of.map((f) => (
        <li key={f.code + f.words}>{f.words}</li>
      ))}
    </ul>
  );
  return open || rest.length === 0 ? (
    lines(findings)
  ) : (
    <details className="why">
      <summary>{first.words} What it says, and what it cannot</summary>
      {lines(rest)}
    </details>
  );
}
