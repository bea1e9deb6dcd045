export const FUELS = ['gas', 'propane', 'oil', 'electricity'];
export const PAIRS = FUELS.flatMap((_, i) => FUELS.slice(i + 1).map((_x, j) => [i, i + 1 + j] as const));

/** Six pairs as the full matrix, row by row. */
export function matrixOf(pairs: readonly string[]): number[] | undefined {
  const m: number[] = Array.from({ length: 16 }, (_, at) => (at % 5 === 0 ? 1 : 0));
  for (const [at, [i, j]] of PAIRS.entries()) {
    const value = (pairs[at] ?? '').trim() === '' ? NaN : Number(pairs[at]);
    if (!Number.isFinite(value)) return undefined;
    m[i * 4 + j] = m[j * 4 + i] = value;
  }
  return m;
}

/** A matrix as six pairs to type. */
export const pairsOf = (matrix: readonly number[]) => PAIRS.map(([i, j]) => String(Number((matrix[i * 4 + j] ?? 0).toFixed(3))));
