import { expect, it } from 'vitest';
import { pushApart, roundScale } from './scale.ts';

it('ends an axis at round numbers that hold the data and zero', () => {
  expect(roundScale(4100, 57800)).toEqual({ low: 0, high: 60000, ticks: [0, 20000, 40000, 60000] });
  const s = roundScale(-1140, 35800);
  expect(s.low).toBeLessThanOrEqual(-1140);
  expect(s.ticks).toContain(0);
});

it('pushes two close labels apart and leaves the others', () => {
  expect(pushApart([100, 20, 104], 15, 0, 300)).toEqual([100, 20, 115]);
});

it('keeps labels inside the picture', () => {
  expect(pushApart([290, 295, 299], 15, 0, 300)).toEqual([270, 285, 300]);
});
