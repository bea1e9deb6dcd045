/** Half the width at the head of an arrow whose shaft is so wide. */
export const headHalf = (wide: number): number => wide * 0.75 + 3;

/** Length of an arrow with its head. */
export const arrowLength = (wide: number, shaft: number): number => shaft + wide / 2 + 6;

interface ArrowProps {
  at: readonly [number, number];
  /** Degrees clockwise from straight up. */
  turn: number;
  outline: number;
  solid?: number | undefined;
  shaft?: number;
  dashed?: boolean;
  hollow?: boolean;
}

/** An arrow as wide as what it stands for: outline as it stands, solid with the option. */
export function Arrow({ at, turn, outline, solid, shaft = 24, dashed, hollow }: ArrowProps) {
  const shape = (wide: number) => {
    const half = Math.max(0.75, wide / 2);
    const head = headHalf(wide);
    return `M${r(-half)} 0 V${r(-shaft)} H${r(-head)} L0 ${r(-arrowLength(wide, shaft))} L${r(head)} ${r(-shaft)} H${r(half)} V0 Z`;
  };
  const colour = hollow ? 'var(--ink)' : 'var(--bad)';
  return (
    <g transform={`translate(${r(at[0])} ${r(at[1])}) rotate(${r(turn)})`}>
      <path
        d={shape(outline)}
        fill={hollow ? 'var(--page)' : colour}
        fillOpacity={hollow ? 1 : 0.13}
        stroke={colour}
        strokeDasharray={dashed ? '3 2' : undefined}
      />
      {solid !== undefined && !hollow && <path d={shape(solid)} fill={colour} fillOpacity={0.78} />}
    </g>
  );
}

/** A name with its figure, and below it the figure with the option. */
export function Label({ x, y, name, second, end }: { x: number; y: number; name: string; second?: string | undefined; end?: boolean }) {
  return (
    <text className="strong" x={x} y={y} textAnchor={end ? 'end' : 'start'}>
      {name}
      {second && (
        <tspan x={x} dy={16} fontWeight={400} fill="var(--quiet)">
          {second}
        </tspan>
      )}
    </text>
  );
}

/** A builder's dimension: the line is broken for its figure. */
export function Dimension({
  from,
  to,
  text,
  upright,
}: {
  from: readonly [number, number];
  to: readonly [number, number];
  text: string;
  upright?: boolean;
}) {
  const long = upright ? Math.abs(to[1] - from[1]) : Math.abs(to[0] - from[0]);
  const room = text.length * 6.4 + 16;
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const fits = long > room + 24;
  const gap = fits ? room / 2 : 0;
  const stroke = ([cx, cy]: readonly [number, number]) => <line x1={cx - 5} y1={cy + 5} x2={cx + 5} y2={cy - 5} strokeWidth={1.3} />;
  const part = (a: readonly [number, number], b: readonly [number, number]) => <line x1={a[0]} y1={a[1]} x2={b[0]} y2={b[1]} />;
  const aside = fits ? 4 : upright ? -8 : -7;
  return (
    <g>
      <g stroke="var(--ink)" strokeWidth={0.8}>
        {part(from, upright ? [mx, my - gap] : [mx - gap, my])}
        {part(upright ? [mx, my + gap] : [mx + gap, my], to)}
        {stroke(from)}
        {stroke(to)}
      </g>
      <text x={mx} y={my + aside} textAnchor="middle" fill="var(--ink)" transform={upright ? `rotate(-90 ${r(mx)} ${r(my)})` : undefined}>
        {text}
      </text>
    </g>
  );
}

/** Ground: a line with the strokes that a builder draws below it. */
export function Ground({ from, to, y }: { from: number; to: number; y: number }) {
  const strokes = Array.from({ length: Math.max(0, Math.floor((to - from) / 16)) }, (_, i) => from + 8 + 16 * i);
  return (
    <g stroke="var(--ink)">
      <line x1={from} x2={to} y1={y} y2={y} strokeWidth={1.5} />
      {strokes.map((x) => (
        <line key={x} x1={x} x2={x - 5} y1={y} y2={y + 5} strokeWidth={0.6} />
      ))}
    </g>
  );
}

const r = (v: number): string => String(Math.round(v * 10) / 10);
