import { expect, it } from 'vitest';
import { crossings, flank, inside, type Point } from './outline.ts';

const arch: Point[] = Array.from({ length: 181 }, (_, i) => ({
  x: 5 - 5 * Math.cos((i * Math.PI) / 180),
  y: 5 * Math.sin((i * Math.PI) / 180),
}));

it('draws the inner film at its true distance all along an arch', () => {
  for (const p of inside(arch, 0.5).slice(1, -1)) expect(Math.hypot(p.x - 5, p.y)).toBeCloseTo(4.5, 2);
});

it('ends a curtain at the film on both sides', () => {
  const [left = 0, right = 0] = crossings(arch, 3);
  expect(left).toBeCloseTo(1, 2);
  expect(right).toBeCloseTo(9, 2);
});

it('hangs one curtain in each bay of a connected range', () => {
  const range: Point[] = [0, 1].flatMap((b) => [
    { x: 10 * b, y: 3 },
    { x: 10 * b + 5, y: 5 },
    { x: 10 * b + 10, y: 3 },
  ]);
  expect(crossings([{ x: 0, y: 0 }, ...range, { x: 20, y: 0 }], 4).map((x) => Math.round(10 * x) / 10)).toEqual([2.5, 7.5, 12.5, 17.5]);
});

it('points an arrow square to the film', () => {
  expect(Math.abs(flank(arch, 5 * Math.sin(Math.PI / 4), 'right').turn - 45)).toBeLessThan(1);
  expect(Math.abs(flank(arch, 5 * Math.sin(Math.PI / 4), 'left').turn + 45)).toBeLessThan(1);
});
