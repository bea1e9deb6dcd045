import { render, screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { madeWords, NormalsPart } from './normals-part.tsx';

const made = (...days: number[]) => days.map((degreeDaysK, i) => ({ season: 2010 + i, name: String(2010 + i), degreeDaysK }));

const normals = {
  monthlyMeanC: [-7, -5.5, -0.3, 7.1, 13.8, 18.8, 21.6, 20.7, 16.3, 9.5, 3.4, -3.1],
  dailySpanK: 10,
  spanTold: false,
  degreeDaysK: 3600,
  departuresFrom: 3,
  made: made(3300, 3600, 4000),
};

describe('a station of monthly normals', () => {
  it('says how the made winters lie about their middle, or that there is one alone', () => {
    expect(madeWords(made(4000, 3600, 3300))).toBe(
      '3 winters are made of them; the mildest lies 8 % under the middle one, the hardest 11 % over.',
    );
    expect(madeWords(made(3600))).toBe('One middling winter is made of them.');
  });

  it('is marked with what that means and shows its twelve months in the unit chosen', () => {
    render(<NormalsPart normals={normals} words={['No winter of it was recorded.']} units="us" />);
    expect(screen.getByText('Monthly normals only.').parentElement?.textContent).toContain('No winter of it was recorded.');
    expect(screen.getAllByRole('row')).toHaveLength(13);
    expect(screen.getByText(/6,480 degree days/).textContent).toContain('18.0 F, taken for granted');
  });
});
