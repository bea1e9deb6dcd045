const words = { A: 'metered, met by the model', B: 'bills, totals', C: 'no fuel record' } as const;

/** How well a house is known: a square full, half or hollow, and its letter. */
export function GradeMark({ grade }: { grade: 'A' | 'B' | 'C' }) {
  return (
    <span title={words[grade]} style={{ whiteSpace: 'nowrap' }}>
      <svg width={10} height={10} aria-hidden="true" style={{ marginRight: 6 }}>
        <rect x={0.5} y={0.5} width={9} height={9} fill="none" stroke="var(--ink)" />
        {grade !== 'C' && <rect x={0} y={grade === 'A' ? 0 : 5} width={10} height={grade === 'A' ? 10 : 5} fill="var(--ink)" />}
      </svg>
      {grade}
    </span>
  );
}
