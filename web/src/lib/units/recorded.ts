import { FOOT_M, GALLON_L, MMBTU_KWH, significant, type UnitSystem } from './format.ts';

const DIGITS = 6;

/** Units that records are kept in, and how each is told in US customary ones. */
const customary: Record<string, readonly [unit: string, of: (v: number) => number]> = {
  m: ['ft', (v) => v / FOOT_M],
  m2: ['ft²', (v) => v / FOOT_M ** 2],
  C: ['F', (v) => v * 1.8 + 32],
  K: ['F', (v) => v * 1.8],
  L: ['gal', (v) => v / GALLON_L],
  kW: ['Btu/h', (v) => (v * 1e6) / MMBTU_KWH],
};

const number = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/i;
const unitOf = / \((m|m2|C|K|L|kW)\)$/;

/** A field of a record with what it was and is, in the reader's units, no figure with more digits than one typed. */
export function recorded(
  title: string,
  values: readonly (string | null | undefined)[],
  u: UnitSystem,
): { title: string; values: string[] } {
  const unit = unitOf.exec(title)?.[1];
  const told = unit !== undefined && u === 'us' ? customary[unit] : undefined;
  const read = (value: string | null | undefined) => {
    if (value === null || value === undefined) return 'not told';
    if (!value.includes('.') && !told) return value;
    if (!number.test(value)) return value;
    const v = significant(told ? told[1](Number(value)) : Number(value), DIGITS);
    return String(v);
  };
  return { title: told ? title.replace(unitOf, ` (${told[0]})`) : title, values: values.map(read) };
}
