import { useRef } from 'react';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { useWidth } from '../../components/charts/use-width.ts';
import { heat, heatUnit, ofHundred } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import type { AwardsCoop, Listed } from './awards-query.ts';

const ROW = 44;
const TOP = 40;

/** One dot an award with its interval, against all that was promised; what is not verified is hollow at the whole range. */
export function DeliveredChart({ awards, delivered }: { awards: readonly Listed[]; delivered: AwardsCoop['delivered'] | undefined }) {
  const { units } = useUnits();
  const ref = useRef<HTMLElement>(null);
  const width = useWidth(ref);
  const promised = awards.filter((a) => a.promisedKwh);
  const most = Math.max(1.25, ...promised.map((a) => a.verified?.high ?? 0));
  const names = Math.min(220, width * 0.45);
  const x = (share: number) => names + 8 + (Math.max(0, share) / most) * (width - names - 24);
  const height = TOP + ROW * promised.length + 4;
  return (
    <section ref={ref}>
      <ChartFrame
        title="Promised against verified"
        caption="Fuel saving of a season, as a share of what was promised. Dot and line: verified, one in twenty lower and higher. Open ring at nothing: returned. Dotted: not verified yet, anything from nothing to all."
        table={{
          heads: ['award', `promised, ${heatUnit(units)} of fuel`, 'delivered, %', 'one in twenty lower, %', 'one in twenty higher, %'],
          rows: promised.map((a) => [
            `${a.farm}, ${a.house}`,
            heat(a.promisedKwh ?? 0, units),
            a.verified ? ofHundred(a.verified.share) : a.returnedOn ? 'returned' : 'not yet',
            a.verified ? ofHundred(a.verified.low) : '',
            a.verified ? ofHundred(a.verified.high) : '',
          ]),
        }}
      >
        <svg width={width} height={height} role="img" aria-label="delivered share of each award, with its interval">
          {[0, 0.5, 1].map((t) => (
            <g key={t}>
              <line
                x1={x(t)}
                x2={x(t)}
                y1={TOP - 6}
                y2={height}
                stroke={t === 1 ? 'var(--accent)' : 'var(--rule)'}
                strokeWidth={t === 1 ? 1.75 : 1}
              />
              <text x={x(t)} y={TOP - 12} textAnchor="middle" className={t === 1 ? 'strong' : undefined}>
                {t === 1 ? 'promised' : `${String(100 * t)} %`}
              </text>
            </g>
          ))}
          {delivered?.share !== null && delivered?.share !== undefined && (
            <line x1={x(delivered.share)} x2={x(delivered.share)} y1={TOP - 6} y2={height} stroke="var(--ink)" strokeDasharray="3 3" />
          )}
          {promised.map((a, i) => {
            const y = TOP + ROW * i + ROW / 2;
            return (
              <g key={a.id}>
                <text x={0} y={y - 3} className="strong">
                  {a.farm}
                </text>
                <text x={0} y={y + 13}>
                  {a.house}, {heat(a.promisedKwh ?? 0, units)} {heatUnit(units)}
                </text>
                {a.verified ? (
                  <g stroke="var(--ink)" strokeWidth={1.5}>
                    <line x1={x(a.verified.low)} x2={x(a.verified.high)} y1={y} y2={y} />
                    <line x1={x(a.verified.low)} x2={x(a.verified.low)} y1={y - 4} y2={y + 4} />
                    <line x1={x(a.verified.high)} x2={x(a.verified.high)} y1={y - 4} y2={y + 4} />
                    <circle cx={x(a.verified.share)} cy={y} r={5.5} fill="var(--ink)" stroke="var(--page)" strokeWidth={1} />
                  </g>
                ) : a.returnedOn ? (
                  <circle cx={x(0)} cy={y} r={4.75} fill="var(--page)" stroke="var(--ink)" strokeWidth={1.5} />
                ) : (
                  <line x1={x(0)} x2={x(1)} y1={y} y2={y} stroke="var(--quiet)" strokeWidth={1.5} strokeDasharray="2 4" />
                )}
              </g>
            );
          })}
        </svg>
      </ChartFrame>
    </section>
  );
}
