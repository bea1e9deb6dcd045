import { describe, expect, it } from 'vitest';
import { readNumber } from './typed-number.ts';

describe('a number as one types it', () => {
  it('is empty, plain, with signs of money and per cent, or with commas between thousands', () => {
    expect(readNumber('  ').value).toBeNull();
    expect(readNumber('2.5').value).toBe(2.5);
    expect(readNumber(' $ 12,000 ').value).toBe(12000);
    expect(readNumber('1,234,567.5').value).toBe(1234567.5);
    expect(readNumber('27.5 %').value).toBe(27.5);
    expect(readNumber('−3').value).toBe(-3);
  });
  it('asks about a decimal comma instead of guessing', () => {
    expect(readNumber('2,5').fault).toBe('"2,5" has a comma for decimals. Write a point: 2.5.');
    expect(readNumber(',75').fault).toContain('0.75');
    expect(readNumber('2,5').value).toBeNaN();
  });
  it('asks about a point that may stand for thousands, where a figure has no such decimals', () => {
    const large = { grouped: true };
    expect(readNumber('4.120', large).fault).toBe(
      '"4.120": does the point stand for thousands? Write 4120 if it does, or 4.12 if it is for decimals.',
    );
    expect(readNumber('1.234.567').fault).toBe('"1.234.567": does the point stand for thousands? Write 1234567 if it does.');
    for (const [typed, value] of [
      ['4120', 4120],
      ['4,120', 4120],
      ['4120.5', 4120.5],
      ['0.125', 0.125],
      ['15595.9', 15595.9],
    ] as const)
      expect(readNumber(typed, large)).toEqual({ value });
    expect(readNumber('9.144')).toEqual({ value: 9.144 });
  });
  it('shortens a figure of hundreds of digits', () => {
    expect(readNumber('1e300', { most: 100 }).fault).toBe('1e+300 is outside. Give 100 or less.');
    expect(readNumber('1' + '0'.repeat(300), { most: 100 }).fault).toBe('1e+300 is outside. Give 100 or less.');
    expect(readNumber('123456789012', { most: 100 }).fault).toBe('123,456,789,012 is outside. Give 100 or less.');
  });
  it('says what text lacks to be a number', () => {
    expect(readNumber('big').fault).toBe('"big" is no number. Write digits only, such as 30 or 2.5.');
    expect(readNumber('12 to 15', { such: '13.5' }).fault).toContain('such as 13.5');
    expect(readNumber('1e999').fault).toContain('too large');
    expect(readNumber('0x10').fault).toContain('is no number');
  });
  it('names the range a figure lies outside of', () => {
    expect(readNumber('-5', { least: 0 }).fault).toBe('−5 is outside. Give 0 or more.');
    expect(readNumber('0', { least: 1, most: 100 }).fault).toBe('0 is outside. Give 1 to 100.');
    expect(readNumber('1e12', { least: 0, most: 1e7 }).fault).toBe('1,000,000,000,000 is outside. Give 0 to 10,000,000.');
    expect(readNumber('12', { most: 5 }).fault).toContain('5 or less');
    expect(readNumber('2.5', { whole: true }).fault).toBe('2.5 is no whole number. Give one such as 3.');
  });
});
