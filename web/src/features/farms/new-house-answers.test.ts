import { describe, expect, it } from 'vitest';
import { inputOf, looksLikeMetres, unanswered } from './new-house-answers.ts';

describe('nine answers', () => {
  it('turns feet, Fahrenheit and Btu an hour into SI', () => {
    const input = inputOf({ ...unanswered, width: '30', length: '96', night: '60', input: '250000' }, 'us', 'r', true);
    expect(input.widthM).toBeCloseTo(9.144, 9);
    expect(input.nightC).toBeCloseTo(15.5556, 4);
    expect(input.inputKw).toBeCloseTo(73.267, 2);
  });

  it('leaves what is empty unknown, never zero', () => {
    const input = inputOf({ ...unanswered, name: 'house 1' }, 'si', 'r', false);
    expect(input.nightC).toBeNull();
    expect(input.usedLastWinter).toBeNull();
    expect(input.farmId).toBeNull();
  });

  it('asks about metres where feet look too small', () => {
    expect(looksLikeMetres({ ...unanswered, width: '9.1', length: '29' }, 'us')).toBe(true);
    expect(looksLikeMetres({ ...unanswered, width: '30', length: '96' }, 'us')).toBe(false);
    expect(looksLikeMetres({ ...unanswered, width: '9.1', length: '29' }, 'si')).toBe(false);
  });
});
