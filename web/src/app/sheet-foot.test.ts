import { expect, it } from 'vitest';
import { footRules } from './sheet-foot.ts';

it('says at the foot of every sheet what it belongs to, and no name breaks out of its quotes', () => {
  expect(footRules('Invented example. Fernbrook Growers, study 1')).toContain('content: "Invented example. Fernbrook Growers, study 1"');
  const rules = footRules('A "quoted"\\ name');
  expect(rules.match(/"/g)).toHaveLength(footRules('plain').match(/"/g)?.length ?? 0);
  expect(rules).not.toContain('\\');
});
