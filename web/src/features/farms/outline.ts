export interface Point {
  x: number;
  y: number;
}

/** The line at a distance inside an outline that runs from the left foot to the right foot, y up. */
export function inside(outline: readonly Point[], distance: number): Point[] {
  return outline.map((p, i) => {
    const before = outline[Math.max(0, i - 1)] ?? p;
    const after = outline[Math.min(outline.length - 1, i + 1)] ?? p;
    const [dx, dy] = [after.x - before.x, after.y - before.y];
    const length = Math.hypot(dx, dy) || 1;
    return { x: p.x + (dy / length) * distance, y: Math.max(0, p.y - (dx / length) * distance) };
  });
}

/** Where an outline crosses a height, left to right. */
export function crossings(outline: readonly Point[], height: number): number[] {
  const found: number[] = [];
  outline.forEach((p, i) => {
    const next = outline[i + 1];
    if (!next || p.y === next.y) return;
    const share = (height - p.y) / (next.y - p.y);
    if (share >= 0 && share < 1) found.push(p.x + share * (next.x - p.x));
  });
  return found;
}

/** The point of the left or right flank at a height, and which way is out, in degrees clockwise from straight up. */
export function flank(outline: readonly Point[], height: number, side: 'left' | 'right'): { at: Point; turn: number } {
  const points = side === 'left' ? outline : [...outline].reverse();
  const i = Math.max(
    1,
    points.findIndex((p) => p.y >= height),
  );
  const [a, b] = [points[i - 1] ?? { x: 0, y: 0 }, points[i] ?? { x: 0, y: 0 }];
  const share = b.y === a.y ? 0 : Math.min(1, Math.max(0, (height - a.y) / (b.y - a.y)));
  const lean = (Math.atan2(Math.abs(b.x - a.x), Math.max(1e-9, b.y - a.y)) * 180) / Math.PI;
  return { at: { x: a.x + share * (b.x - a.x), y: height }, turn: side === 'left' ? -90 + lean : 90 - lean };
}
