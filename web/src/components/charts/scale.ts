/** Ends and steps that are round numbers: at most so many steps, zero among them where money is compared. */
export function roundScale(low: number, high: number, steps = 4): { low: number; high: number; ticks: number[] } {
  const [from, to] = [Math.min(0, low), Math.max(0, high)];
  const raw = Math.max(1e-9, (to - from) / steps);
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * ([1, 2, 2.5, 5, 10].find((m) => m * power >= raw) ?? 10);
  const [first, last] = [Math.floor(from / step + 1e-9), Math.ceil(to / step - 1e-9)];
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  return { low: first * step, high: last * step, ticks };
}

/** Moves labels apart so that none is nearer than a line's height, keeping their order and staying within the ends. */
export function pushApart(at: readonly number[], least: number, top: number, bottom: number): number[] {
  const order = at.map((y, i) => ({ y, i })).sort((a, b) => a.y - b.y);
  order.forEach((o, k) => {
    const before = order[k - 1];
    o.y = Math.max(o.y, before ? before.y + least : top);
  });
  for (let k = order.length - 1; k >= 0; k--) {
    const [o, after] = [order[k], order[k + 1]];
    if (o) o.y = Math.min(o.y, after ? after.y - least : bottom);
  }
  const moved = [...at];
  order.forEach((o) => (moved[o.i] = o.y));
  return moved;
}
