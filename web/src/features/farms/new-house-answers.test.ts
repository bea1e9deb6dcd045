import { describe, expect, it } from 'vitest';
import { inputOf, looksLikeMetres, turnedAnswers, unanswered } from './new-house-answers.ts';

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

  it('turns what is typed with the switch: sizes, set points, heater, fuel and its price', () => {
    const typed = { ...unanswered, width: '30', length: '96', night: '60', input: '300000', used: '4120', price: '2.35', filmYear: '2024' };
    const turned = turnedAnswers(typed, 'us', 'si');
    expect(turned).toMatchObject({
      width: '9.144',
      length: '29.261',
      night: '15.56',
      input: '87.92',
      used: '15595.9',
      price: '0.6208',
      filmYear: '2024',
    });
    // a unit of fuel that was chosen stays, with its figures
    expect(turnedAnswers({ ...typed, unit: 'gal' }, 'us', 'si')).toMatchObject({ used: '4120', price: '2.35' });
    const [before, after] = [inputOf(typed, 'us', 'r', true), inputOf(turned, 'si', 'r', true)];
    expect([before.unit, after.unit]).toEqual(['gal', 'L']);
    expect(after.widthM).toBeCloseTo(before.widthM, 3);
    expect(after.inputKw ?? 0).toBeCloseTo(before.inputKw ?? 0, 1);
  });

  it('asks about metres where feet look too small', () => {
    expect(looksLikeMetres({ ...unanswered, width: '9.1', length: '29' }, 'us')).toBe(true);
    expect(looksLikeMetres({ ...unanswered, width: '30', length: '96' }, 'us')).toBe(false);
    expect(looksLikeMetres({ ...unanswered, width: '9.1', length: '29' }, 'si')).toBe(false);
  });
});
