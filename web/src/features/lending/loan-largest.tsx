import { useRef } from 'react';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { pushApart, roundScale } from '../../components/charts/scale.ts';
import { useWidth } from '../../components/charts/use-width.ts';
import { dollars } from '../../lib/units/format.ts';
import type { LoanAnswer } from './lending-queries.ts';
import { cover, safeDollars } from './lending-words.ts';

const HEIGHT = 280;
const LEFT = 72;
const TOP = 18;
const BOTTOM = 44;
const ROOM = 132;

/** Largest loan against the confidence asked, by the savings and by the farm, with the amount of the case across it. */
export function LargestChart({
  answer,
  amountUsd,
  requiredProject,
  requiredFarm,
}: {
  answer: LoanAnswer;
  amountUsd: number;
  requiredProject: number;
  requiredFarm: number;
}) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, 560);
  const roomy = width >= 440;
  const right = roomy ? ROOM : 10;
  const points = answer.largest;
  const from = points[0]?.confidence ?? 0.5;
  const most = Math.max(amountUsd, ...points.map((p) => p.projectUsd ?? 0), ...points.map((p) => Math.min(p.farmUsd ?? 0, 4 * amountUsd)));
  const scale = roundScale(0, most);
  const x = (q: number) => LEFT + ((q - from) / (1 - from)) * (width - LEFT - right);
  const y = (usd: number) => HEIGHT - BOTTOM - (Math.min(usd, scale.high) / scale.high) * (HEIGHT - TOP - BOTTOM);
  const line = (of: 'projectUsd' | 'farmUsd') =>
    points.flatMap((p) => (p[of] === null || p[of] === undefined ? [] : [[p.confidence, p[of]] as const]));
  const lines = [
    { of: 'projectUsd' as const, name: 'by the savings', dash: undefined },
    { of: 'farmUsd' as const, name: 'by the farm', dash: '6 4' },
  ].map((l) => ({ ...l, at: line(l.of) }));
  const ends = lines.flatMap((l) => {
    const last = l.at.at(-1);
    return last ? [{ name: l.name, y: y(last[1]), x: x(last[0]) }] : [];
  });
  const places = pushApart([...ends.map((e) => e.y), y(amountUsd)], 16, TOP, HEIGHT - BOTTOM);
  const fails = answer.farm && points.every((p) => p.confidence < 0.9 || (p.farmUsd ?? 0) < amountUsd);
  return (
    <section>
      <ChartFrame
        title="Largest loan against the confidence asked"
        caption={`The most that keeps project cover ${cover(requiredProject)}${answer.farm ? ` and farm cover ${cover(requiredFarm)}` : ''} in every season of the term, in so many of 100 futures.`}
        table={{
          heads: ['of 100 futures', 'by the savings', ...(answer.farm ? ['by the farm'] : [])],
          rows: points.map((p) => [
            Math.round(100 * p.confidence),
            safeDollars(p.projectUsd),
            ...(answer.farm ? [safeDollars(p.farmUsd)] : []),
          ]),
        }}
      >
        <div ref={frame}>
          <svg
            width={width}
            height={HEIGHT}
            role="img"
            aria-label="largest loan against the confidence asked; the same numbers stand in the table below"
          >
            {scale.ticks.map((t) => (
              <g key={t}>
                <line x1={LEFT} x2={width - right} y1={y(t)} y2={y(t)} stroke={t === 0 ? 'var(--ink)' : 'var(--rule)'} />
                <text x={LEFT - 8} y={y(t) + 4} textAnchor="end">
                  {dollars(t)}
                </text>
              </g>
            ))}
            {[0.5, 0.6, 0.7, 0.8, 0.9].map((q) => (
              <text key={q} x={x(q)} y={HEIGHT - BOTTOM + 18} textAnchor="middle">
                {Math.round(100 * q)}
              </text>
            ))}
            <text x={x(0.99)} y={HEIGHT - BOTTOM + 18} textAnchor="middle">
              99
            </text>
            <text x={width - right} y={HEIGHT - 6} textAnchor="end">
              of 100 futures hold
            </text>
            <line x1={LEFT} x2={width - right} y1={y(amountUsd)} y2={y(amountUsd)} stroke="var(--accent)" strokeWidth={2} />
            {lines.map((l) => (
              <g key={l.of}>
                <polyline
                  points={l.at.map(([q, usd]) => `${String(x(q))},${String(y(usd))}`).join(' ')}
                  fill="none"
                  stroke="var(--ink)"
                  strokeWidth={2}
                  strokeDasharray={l.dash}
                />
                {l.at.map(([q, usd]) => (
                  <circle key={q} cx={x(q)} cy={y(usd)} r={3.5} fill={l.dash ? 'var(--page)' : 'var(--ink)'} stroke="var(--ink)">
                    <title>{`${String(Math.round(100 * q))} of 100: ${safeDollars(usd)} ${l.name}`}</title>
                  </circle>
                ))}
              </g>
            ))}
            {roomy && (
              <>
                {ends.map((e, i) => (
                  <text key={e.name} x={width - right + 8} y={(places[i] ?? 0) + 4} className="strong">
                    {e.name}
                  </text>
                ))}
                <text x={width - right + 8} y={(places.at(-1) ?? 0) + 4} fill="var(--accent)" fontWeight={600}>
                  this loan, {dollars(amountUsd)}
                </text>
              </>
            )}
          </svg>
        </div>
      </ChartFrame>
      <p className="small quiet">
        {!roomy && `Green: this loan, ${dollars(amountUsd)}. `}
        {answer.farm && `Solid: by the savings; dashed: by the farm. `}
        At 90, 95 and 99 of 100: {[0.9, 0.95, 0.99]
          .map((q) => safeDollars(points.find((p) => p.confidence === q)?.projectUsd))
          .join(', ')}{' '}
        by the savings
        {answer.farm &&
          `; ${[0.9, 0.95, 0.99].map((q) => safeDollars(points.find((p) => p.confidence === q)?.farmUsd)).join(', ')} by the farm`}
        .
        {fails &&
          ` The farm falls short of ${cover(requiredFarm)} in some season in ${String(Math.round(100 * (answer.farm?.underRequiredShare ?? 0)))} of 100 futures with this loan: mostly its other debt and the margin of its sales, which no smaller loan mends.`}
      </p>
    </section>
  );
}
