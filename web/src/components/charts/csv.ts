/** A text that a spreadsheet would take for a formula is led by an apostrophe; a number stays one. */
function cell(value: string | number): string {
  const text = String(value);
  const risky = /^[=+\-@\t\r]/.test(text) && !/^[+-]?[\d,.]+(e[+-]?\d+)?\s*%?$/i.test(text);
  return `"${(risky ? `'${text}` : text).replaceAll('"', '""')}"`;
}

/** Rows as comma-separated text, each cell in quotes, lines ended as spreadsheets want it. */
export const csvOf = (rows: readonly (readonly (string | number)[])[]): string => rows.map((r) => r.map(cell).join(',')).join('\r\n');
