/** What a field takes; what is not said is not asked. */
export interface Expected {
  least?: number;
  most?: number;
  /** Whole numbers only, such as a year or a number of bays. */
  whole?: boolean;
  /** A figure that nobody gives to three decimals, so that a point before three digits may stand for thousands: it is asked about. */
  grouped?: boolean;
  /** A figure that would be right, as one types it. */
  such?: string;
}

export interface Read {
  /** Null where the field is empty, NaN where it holds no number that can be taken. */
  value: number | null;
  /** What is wrong and what would be right. */
  fault?: string;
}

const group = /^[+-]?\d{1,3}(,\d{3})+(\.\d*)?$/;
const points = /^[+-]?[1-9]\d{0,2}(\.\d{3})+$/;
const decimalComma = /^([+-]?\d*),(\d+)$/;
const plain = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** One too large to be read as digits is told by its power of ten. */
const shown = (v: number): string =>
  (Math.abs(v) < 1e15 ? v.toLocaleString('en-US', { maximumFractionDigits: 6 }) : String(Number(v.toPrecision(3)).toExponential())).replace(
    '-',
    '−',
  );

/** What a person typed as a number: dollar and per cent signs, blanks and commas between thousands are passed over; a comma for decimals is asked about, never guessed. */
export function readNumber(typed: string, expected: Expected = {}): Read {
  const text = typed.replace(/[$%\s]/g, '').replace('−', '-');
  const bad = (fault: string): Read => ({ value: Number.NaN, fault });
  if (typed.trim() === '') return { value: null };
  const bare = group.test(text) ? text.replaceAll(',', '') : text;
  const comma = decimalComma.exec(bare);
  if (comma) return bad(`"${typed.trim()}" has a comma for decimals. Write a point: ${comma[1] || '0'}.${comma[2] ?? ''}.`);
  if (points.test(bare) && (expected.grouped || bare.indexOf('.') !== bare.lastIndexOf('.'))) {
    const [without, decimals] = [bare.replaceAll('.', ''), Number(bare)];
    const or = Number.isFinite(decimals) ? `, or ${String(decimals)} if it is for decimals` : '';
    return bad(`"${typed.trim()}": does the point stand for thousands? Write ${without} if it does${or}.`);
  }
  if (!plain.test(bare)) return bad(`"${typed.trim()}" is no number. Write digits only, such as ${expected.such ?? '30 or 2.5'}.`);
  const value = Number(bare);
  if (!Number.isFinite(value)) return bad(`"${typed.trim()}" is too large to reckon with.`);
  const { least, most } = expected;
  const outside = (least !== undefined && value < least) || (most !== undefined && value > most);
  if (outside) {
    const right =
      least === undefined
        ? `Give ${shown(most ?? 0)} or less`
        : most === undefined
          ? `Give ${shown(least)} or more`
          : `Give ${shown(least)} to ${shown(most)}`;
    return bad(`${shown(value)} is outside. ${right}.`);
  }
  if (expected.whole && !Number.isInteger(value))
    return bad(`${shown(value)} is no whole number. Give one such as ${shown(Math.round(value))}.`);
  return { value };
}
