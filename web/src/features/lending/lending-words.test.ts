import { describe, expect, it } from 'vitest';
import { cover, floored, percent, safeDollars } from './lending-words.ts';

describe('words of loans', () => {
  it('never rounds a safe amount up', () => {
    expect(floored(7869)).toBe(7860);
    expect(floored(18999.9)).toBe(18900);
    expect(floored(640)).toBe(640);
    expect(safeDollars(46058)).toBe('$46,000');
    expect(safeDollars(null)).toBe('none');
  });

  it('tells covers with two digits and rates without idle zeros', () => {
    expect(cover(1.4754)).toBe('1.48');
    expect(cover(-0.44)).toBe('−0.44');
    expect(percent(0.0725)).toBe('7.25 %');
    expect(percent(0.07)).toBe('7 %');
  });
});
