import { useRef } from 'react';
import { useWidth } from '../../components/charts/use-width.ts';
import type { Station } from './winters-page.tsx';

const HEIGHT = 260;
const LEFT = 52;
const RIGHT = 14;
const TOP = 18;
const BOTTOM = 34;

/** Recorded winters as open dots in their years, and beside them the winters that the futures draw as a band. */
export function SeverityChart({ recorded, outlook }: { recorded: Station['severity']; outlook: Station['outlook'] }) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, 760);
  const from = Math.min(...recorded.map((r) => r.season));
  const to = Math.max(...recorded.map((r) => r.season), ...outlook.map((o) => o.season));
  const most =
    Math.max(
      10,
      ...recorded.map((r) => Math.abs(r.againstMiddlePct)),
      ...outlook.map((o) => Math.max(Math.abs(o.p10Pct), Math.abs(o.p90Pct))),
    ) * 1.1;
  const x = (season: number) => LEFT + ((season - from) / Math.max(1, to - from)) * (width - LEFT - RIGHT);
  const y = (pct: number) => TOP + ((most - pct) / (2 * most)) * (HEIGHT - TOP - BOTTOM);
  const band = [...outlook.map((o) => [o.season, o.p90Pct] as const), ...[...outlook].reverse().map((o) => [o.season, o.p10Pct] as const)];
  const sorted = [...recorded].sort((a, b) => b.againstMiddlePct - a.againstMiddlePct);
  const named = [sorted[0], sorted.at(-1)].filter((r) => r !== undefined);
  const step = most > 30 ? 20 : 10;
  const ticks = [-2, -1, 0, 1, 2].map((t) => t * step).filter((t) => Math.abs(t) <= most);
  const start = outlook[0];
  return (
    <div ref={frame}>
      <svg
        width={width}
        height={HEIGHT}
        viewBox={`0 0 ${String(width)} ${String(HEIGHT)}`}
        role="img"
        aria-label="severity of every recorded winter, and the winters that the futures draw"
      >
        {ticks.map((t) => (
          <g key={t}>
            <line x1={LEFT} x2={width - RIGHT} y1={y(t)} y2={y(t)} stroke={t === 0 ? 'var(--ink)' : 'var(--rule)'} />
            <text x={LEFT - 8} y={y(t) + 4} textAnchor="end">
              {t > 0 ? `+${String(t)}` : String(t).replace('-', '−')} %
            </text>
          </g>
        ))}
        {band.length > 0 && (
          <polygon
            points={band.map(([s, v]) => `${String(x(s))},${String(y(v))}`).join(' ')}
            fill="var(--ink)"
            fillOpacity="var(--band-outer)"
            stroke="var(--ink)"
            strokeWidth={0.75}
          />
        )}
        {outlook.length > 1 && (
          <polyline
            points={outlook.map((o) => `${String(x(o.season))},${String(y(o.p50Pct))}`).join(' ')}
            fill="none"
            stroke="var(--ink)"
            strokeWidth={2}
          />
        )}
        {recorded.map((r) => (
          <circle key={r.season} cx={x(r.season)} cy={y(r.againstMiddlePct)} r={5} fill="var(--page)" stroke="var(--ink)" strokeWidth={1.5}>
            <title>{`${r.name}: ${r.againstMiddlePct > 0 ? '+' : '−'}${String(Math.abs(Math.round(r.againstMiddlePct)))} %`}</title>
          </circle>
        ))}
        {named.map((r) => (
          <text
            key={r.season}
            className="strong"
            x={Math.min(Math.max(x(r.season), LEFT + 26), width - RIGHT - 26)}
            y={y(r.againstMiddlePct) + (r.againstMiddlePct >= 0 ? -10 : 20)}
            textAnchor="middle"
          >
            {r.name}
          </text>
        ))}
        <text x={x(from)} y={HEIGHT - 10}>
          {from}
        </text>
        {start && (
          <text x={x(start.season)} y={HEIGHT - 10} textAnchor="middle">
            {start.season}
          </text>
        )}
        <text x={x(to)} y={HEIGHT - 10} textAnchor="end">
          {to}
        </text>
      </svg>
    </div>
  );
}
