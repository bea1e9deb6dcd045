import { FOOT_M, GALLON_L, MMBTU_KWH, significant, type UnitSystem } from './format.ts';

const number = String.raw`([−-]?[\d,]*\.?\d+)`;
const value = (text: string): number => Number(text.replaceAll(',', '').replace('−', '-'));

/** As many digits as the figure is known to, and no fewer than two; noughts at the end of a whole number are not known. */
function like(text: string, converted: number): string {
  const digits = (text.includes('.') ? text : text.replace(/0+$/, '')).replace(/[^\d]/g, '').replace(/^0+/, '');
  return significant(converted, Math.max(2, digits.length)).toLocaleString('en-US', { maximumFractionDigits: 3 }).replace('-', '−');
}

type Rule = readonly [pattern: RegExp, unit: string, turn: (v: number) => number];

const per = (unit: string) => new RegExp(String.raw`\$${number}( a |/)${unit}\b`, 'g');
/** Prices a unit: the figure falls as the unit grows. */
const prices: Rule[] = [
  [per('gal(?:lon)?'), 'L', (v) => v / GALLON_L],
  [per('mcf'), 'm³', (v) => v / 28.316846592],
  [per('ccf'), 'm³', (v) => v / 2.8316846592],
  [per('therm'), 'kWh', (v) => v / (MMBTU_KWH / 10)],
  [per('MMBtu'), 'MWh', (v) => (v / MMBTU_KWH) * 1000],
  [per('ton'), 't', (v) => v / 0.90718474],
];

const DIFFERENCE = String.raw`(?= (?:lower|higher|warmer|colder|of outside range|over|above|below the))`;
const sizes: Rule[] = [
  [new RegExp(`${number} ft²`, 'g'), 'm²', (v) => v * FOOT_M * FOOT_M],
  [new RegExp(String.raw`${number} ft\b`, 'g'), 'm', (v) => v * FOOT_M],
  [new RegExp(String.raw`${number} gal(?:lons?)?\b`, 'g'), 'L', (v) => v * GALLON_L],
  [new RegExp(String.raw`${number} MMBtu\b`, 'g'), 'MWh', (v) => (v * MMBTU_KWH) / 1000],
  [new RegExp(String.raw`${number} F\b${DIFFERENCE}`, 'g'), 'K', (v) => v / 1.8],
  [new RegExp(String.raw`${number} F\b`, 'g'), 'C', (v) => (v - 32) / 1.8],
];

/** Both units side by side, "0.6 F (0.3 K)" or "9.1 m (30 ft)": the chosen one stays. */
const both = new RegExp(String.raw`${number} (F|ft|ft²) \(${number} (K|C|m|m²)\)|${number} (m|m²|K|C) \(${number} (ft|ft²|F)\)`, 'g');

/** Words of the server in the chosen units. They come in US units, or in both where a bound is told. */
export function told(words: string, u: UnitSystem): string {
  const one = words.replace(both, (_, us1, usUnit1, si1, siUnit1, si2, siUnit2, us2, usUnit2) =>
    u === 'us' ? `${String(us1 ?? us2)} ${String(usUnit1 ?? usUnit2)}` : `${String(si1 ?? si2)} ${String(siUnit1 ?? siUnit2)}`,
  );
  if (u === 'us') return one;
  // "100 to 300 gallons": the first figure has its unit behind the second
  const spread = one.replace(
    new RegExp(String.raw`${number} to ${number} gal(?:lons?)?\b`, 'g'),
    (_, a: string, b: string) => `${like(a, value(a) * GALLON_L)} to ${like(b, value(b) * GALLON_L)} L`,
  );
  // the ends of an interval of money are no prices; only what stands before "a gal" or "/gal" is
  const priced = prices.reduce(
    (text, [pattern, unit, turn]) => text.replace(pattern, (_, v: string, join: string) => `$${like(v, turn(value(v)))}${join}${unit}`),
    spread,
  );
  return sizes.reduce(
    (text, [pattern, unit, turn]) => text.replace(pattern, (_, v: string) => `${like(v, turn(value(v)))} ${unit}`),
    priced,
  );
}

const SPAN = String.raw`[−-]?[\d,.]+(?:E\+\d+)?(?: to [−-]?[\d,.]+)?`;
const SI_UNIT = String.raw`(?:m|kW|W|C|W/mK|\$/m2)`;
const US_UNIT = String.raw`(?:ft|Btu/h ft F|Btu/h|F|\$/ft2)`;
const siFirst = new RegExp(String.raw`(${SPAN} ${SI_UNIT}) \((${SPAN} ${US_UNIT})\)`, 'g');
const usFirst = new RegExp(String.raw`(${SPAN} ${US_UNIT}) \((${SPAN} ${SI_UNIT})\)`, 'g');

/** What is wrong and what would be right, in both units: that of the switch, which was typed, stands first. */
export const chosenFirst = (words: string, u: UnitSystem): string => words.replace(u === 'us' ? siFirst : usFirst, '$2 ($1)');

/** A title inside a sentence: the first letter of each of its parts is small, units and names keep theirs. */
export const inSentence = (title: string): string =>
  title
    .split('; ')
    .map((part) => (/^[A-Z][a-z]/.test(part) && !part.startsWith('No. ') ? part.charAt(0).toLowerCase() + part.slice(1) : part))
    .join('; ');
