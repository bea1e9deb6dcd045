import { pushApart } from './scale.ts';

/** Room at the right of a fan for the names of its levels. */
export const LABEL_ROOM = 128;

export interface FanLabel {
  at: number;
  words: string;
  strong?: boolean;
  accent?: boolean;
}

interface Props {
  labels: readonly FanLabel[];
  scale: { low: number; high: number };
  top: number;
  bottom: number;
  width: number;
}

/** Names of the levels at the right end, pushed apart where they come too close. */
export function FanLabels({ labels, scale, top, bottom, width }: Props) {
  const y = (v: number) => bottom - ((v - scale.low) / (scale.high - scale.low)) * (bottom - top);
  const places = pushApart(
    labels.map((l) => y(l.at)),
    15,
    top,
    bottom,
  );
  return (
    <svg
      aria-hidden="true"
      width={width}
      height={bottom + 10}
      viewBox={`0 0 ${String(width)} ${String(bottom + 10)}`}
      style={{ position: 'absolute', left: 0, top: 0, pointerEvents: 'none' }}
    >
      {labels.map((l, i) => (
        <text
          key={l.words}
          x={width - LABEL_ROOM + 8}
          y={(places[i] ?? 0) + 4}
          className={l.strong ? 'strong' : undefined}
          {...(l.accent ? { fill: 'var(--accent)', fontWeight: 600 } : {})}
        >
          {l.words}
        </text>
      ))}
    </svg>
  );
}
