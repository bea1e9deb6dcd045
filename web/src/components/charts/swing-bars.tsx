import { useRef } from 'react';
import { roundScale } from './scale.ts';
import { useWidth } from './use-width.ts';

interface End {
  words: string;
  value: number;
}

export interface Swing {
  field: string;
  title: string;
  low: End;
  high: End;
}

interface Props {
  base: number;
  bars: readonly Swing[];
  format: (v: number) => string;
  label: string;
}

const END = 74;

/** One bar an input from its one-in-ten low to its one-in-ten high: pale towards the worse, dark towards the better. */
export function SwingBars({ base, bars, format, label }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, 560);
  const narrow = width < 480;
  const left = narrow ? 0 : 230;
  const [row, head] = [narrow ? 48 : 30, 26];
  const values = bars.flatMap((b) => [b.low.value, b.high.value, base]);
  const scale = roundScale(Math.min(...values), Math.max(...values), narrow ? 3 : 4);
  const room = width - left - 2 * END;
  const x = (v: number) => left + END + ((v - scale.low) / (scale.high - scale.low)) * room;
  const height = head + row * bars.length + 4;
  const placed = bars.map((b, i) => {
    const [worse, better] = b.low.value <= b.high.value ? [b.low, b.high] : [b.high, b.low];
    return { ...b, worse, better, y: head + row * i + (narrow ? 20 : 4) };
  });
  return (
    <div ref={frame}>
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${String(width)} ${String(height)}`}
        role="img"
        aria-label={label}
        style={{ display: 'block' }}
      >
        {scale.ticks.map((t) => (
          <g key={t}>
            <line x1={x(t)} x2={x(t)} y1={head - 6} y2={height} stroke={t === 0 ? 'var(--ink)' : 'var(--rule)'} />
            <text x={x(t)} y={12} textAnchor="middle">
              {format(t)}
            </text>
          </g>
        ))}
        {placed.map((b) => (
          <g key={b.field}>
            <rect
              x={x(b.worse.value)}
              y={b.y}
              height={17}
              width={Math.max(0, x(base) - x(b.worse.value))}
              fill="var(--quiet)"
              fillOpacity={0.45}
            />
            <rect x={x(base)} y={b.y} height={17} width={Math.max(0, x(b.better.value) - x(base))} fill="var(--ink)" fillOpacity={0.8} />
          </g>
        ))}
        <line x1={x(base)} x2={x(base)} y1={head - 6} y2={height} stroke="var(--accent)" strokeWidth={2} />
        {placed.map((b) => (
          <g key={b.field}>
            <text className="halo" x={0} y={narrow ? b.y - 5 : b.y + 14} fill="var(--ink)">
              {b.title}
            </text>
            <text className="halo" x={Math.min(x(b.worse.value), x(base)) - 5} y={b.y + 13} textAnchor="end">
              {b.worse.words}
            </text>
            <text className="halo" x={Math.max(x(b.better.value), x(base)) + 5} y={b.y + 13}>
              {b.better.words}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}
