import { counted } from '../../lib/units/format.ts';
import type { Order } from './funding-query.ts';

/** Why fewer houses take part than the co-op has; nothing where all do. */
export function outWords(rowTotal: number, out: Order['housesOut']): string {
  const why = [
    [out.byRule, 'kept out by a rule, as told below'],
    [out.withoutOutlay, 'with no option that costs anything to build'],
    [out.notStudied, 'not in the newest study'],
  ] as const;
  const said = why.filter(([count]) => count > 0).map(([count, words]) => `${String(count)} ${words}`);
  return said.length === 0 ? '' : `Of ${counted(out.houseCount, 'house')} ${String(rowTotal)} take part; the others: ${said.join(', ')}.`;
}
