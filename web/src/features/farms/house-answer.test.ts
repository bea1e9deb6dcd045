import { describe, expect, it } from 'vitest';
import { answerOf } from './house-answer.ts';

const option = (title: string, npv: number, season: number | null, outlayUsd = 1000) => ({
  title,
  result: { outlayUsd, npvUsd: { p50: npv }, lastingPayback: { p50Season: season, neverShare: season ? 0.1 : 0.9 } },
});

describe('what the heading of a house speaks of', () => {
  it('is the option worth most, whatever its place in the list', () => {
    const best = answerOf([option('Foam', 500, 6), option('Curtain', 9000, 4), option('Doors', 20, 9)]);
    expect(best).toMatchObject({ kind: 'best', option: { title: 'Curtain' } });
  });
  it('is never one that loses money or is never paid back in the middle', () => {
    expect(answerOf([option('Foam', -4000, null), option('Doors', 300, 5)])).toMatchObject({ option: { title: 'Doors' } });
    expect(answerOf([option('Foam', 100, null), option('Doors', 30, 5)])).toMatchObject({ option: { title: 'Doors' } });
  });
  it('says that none pays where none does', () => {
    expect(answerOf([option('Foam', -4000, null), option('Doors', -3, null)])).toEqual({ kind: 'none', count: 2 });
  });
  it('does not judge what costs nothing or was not studied', () => {
    expect(answerOf([option('Open later', 9000, 1, 0), { title: 'New', result: null }])).toEqual({ kind: 'unknown' });
  });
});
