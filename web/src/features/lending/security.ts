import type { CollateralPartInput, CovenantInput } from '../../lib/graphql/generated/graphql.ts';
import { readNumber } from '../../lib/units/typed-number.ts';

/** What secures a loan and what the borrower undertakes, as typed. */
export interface TypedSecurity {
  collateral: { what: string; worth: string; asOfOn: string }[];
  covenants: { words: string; dueOn: string }[];
}

interface Kept {
  collateral: readonly { what: string; worthUsd: number; asOfOn?: string | null }[];
  covenants: readonly { words: string; dueOn?: string | null }[];
}

const finite = (text: string): number | undefined => {
  const { value } = readNumber(text);
  return value !== null && Number.isFinite(value) ? value : undefined;
};

export const noSecurity: TypedSecurity = { collateral: [], covenants: [] };

export const securityOf = (loan: Kept): TypedSecurity => ({
  collateral: loan.collateral.map((c) => ({ what: c.what, worth: String(c.worthUsd), asOfOn: c.asOfOn ?? '' })),
  covenants: loan.covenants.map((c) => ({ words: c.words, dueOn: c.dueOn ?? '' })),
});

/** What is sent; a worth that is no number is told by the server as out of range, never taken as nothing. */
export const securityInput = (t: TypedSecurity): { collateral: CollateralPartInput[]; covenants: CovenantInput[] } => ({
  collateral: t.collateral.map((c) => ({ what: c.what, worthUsd: finite(c.worth) ?? -1, asOfOn: c.asOfOn || null })),
  covenants: t.covenants.map((c) => ({ words: c.words, dueOn: c.dueOn || null })),
});

/** Worth of all parts as typed so far. */
export const worthOf = (t: TypedSecurity): number => t.collateral.reduce((s, c) => s + (finite(c.worth) ?? 0), 0);
