import { describe, expect, it } from 'vitest';
import css from './tokens.css?raw';

const [light, dark] = css
  .split(":root[data-theme='dark']")
  .map((part) => Object.fromEntries([...part.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6})/g)].map((m) => [m[1], m[2]])));

type Rgb = [number, number, number];
const linear = (hex: string): Rgb =>
  [1, 3, 5]
    .map((i) => parseInt(hex.slice(i, i + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as Rgb;
const luminance = (c: Rgb) => 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
// WCAG 2.2, contrast ratio
const contrast = (a: string, b: string) => {
  const [hi, lo] = [luminance(linear(a)), luminance(linear(b))].sort((x, y) => y - x) as [number, number];
  return (hi + 0.05) / (lo + 0.05);
};
// Ottosson (2020), OKLab
const oklab = ([r, g, b]: Rgb): Rgb => {
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
};
// Machado, Oliveira and Fernandes (2009), severity 1
const sights: Record<string, number[][]> = {
  full: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};
const seen = (hex: string, sight: number[][]): Rgb => {
  const c = linear(hex);
  return sight.map((row) => Math.min(1, Math.max(0, row[0]! * c[0] + row[1]! * c[1] + row[2]! * c[2]))) as Rgb;
};

describe.each([
  ['light', light!],
  ['dark', dark!],
])('%s tokens', (_, t) => {
  it.each(['ink', 'quiet', 'accent', 'warn', 'bad'])('%s is readable on the page', (name) => {
    expect(contrast(t[name]!, t['page']!)).toBeGreaterThanOrEqual(4.5);
  });
  it.each(['fuel-gas', 'fuel-propane', 'fuel-oil', 'fuel-electricity', 'fuel-pellets'])('%s stands off the page', (name) => {
    expect(contrast(t[name]!, t['page']!)).toBeGreaterThanOrEqual(3);
  });
  it.each(Object.keys(sights))('fuels stay apart for %s sight', (sight) => {
    const fuels = Object.keys(t).filter((k) => k.startsWith('fuel-'));
    for (const a of fuels) {
      for (const b of fuels.filter((x) => x > a)) {
        const [p, q] = [oklab(seen(t[a]!, sights[sight]!)), oklab(seen(t[b]!, sights[sight]!))];
        const distance = 100 * Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
        expect(distance, `${a} and ${b}`).toBeGreaterThanOrEqual(11.9);
      }
    }
  });
});
