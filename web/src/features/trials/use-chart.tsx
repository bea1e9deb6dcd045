import { useRef } from 'react';
import { useWidth } from '../../components/charts/use-width.ts';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { counted as countOf, heat, heatUnit, type UnitSystem } from '../../lib/units/format.ts';
import type { Comparison } from './trials-query.ts';
import { inSentence, told } from '../../lib/units/told.ts';

const HEIGHT = 330;
const LEFT = 56;
const BESIDE = 190;
const NARROW = 520;
const TOP = 16;
const BOTTOM = 44;

/** Heat a day of the treated house and of the control against how much warmer it is inside than outside, with the fitted lines. */
export function UseChart({ comparison: c, control, units }: { comparison: Comparison; control: string; units: UnitSystem }) {
  const frame = useRef<HTMLDivElement>(null);
  const width = Math.min(840, useWidth(frame));
  // on a phone the lines carry their names inside the picture
  const narrow = width < NARROW;
  const right = narrow ? 8 : BESIDE;
  const degree = units === 'us' ? 1.8 : 1;
  const scaleHeat = (kwh: number) => (units === 'us' ? kwh / 293.07107 : kwh / 1000);
  const counted = c.nights.filter((n) => !n.leftOut);
  const inUse = counted.filter((n) => n.state !== 'IDLE');
  const most = Math.max(...counted.map((n) => Math.max(n.controlKwhPerDay, n.treatedKwhPerDay)), 1);
  const lifts = counted.flatMap((n) => [n.controlLiftK, n.treatedLiftK]);
  const [from, to] = [Math.min(...lifts), Math.max(...lifts)];
  const x = (k: number) => LEFT + ((k - from) / Math.max(1, to - from)) * (width - LEFT - right);
  const y = (kwh: number) => HEIGHT - BOTTOM - (Math.max(0, kwh) / most) * (HEIGHT - TOP - BOTTOM);
  const line = (l: Comparison['controlLine'], dashed: boolean) => (
    <line
      x1={x(l.fromK)}
      y1={y(l.atZeroKwh + l.kwhPerK * l.fromK)}
      x2={x(l.toK)}
      y2={y(l.atZeroKwh + l.kwhPerK * l.toK)}
      stroke={dashed ? 'var(--ink)' : 'var(--accent)'}
      strokeWidth={2}
      strokeDasharray={dashed ? '7 3' : undefined}
    />
  );
  const [endControl, endTreated] = [
    y(c.controlLine.atZeroKwh + c.controlLine.kwhPerK * c.controlLine.toK),
    y(c.treatedLine.atZeroKwh + c.treatedLine.kwhPerK * c.treatedLine.toK),
  ];
  const step = niceStep(scaleHeat(most) / 4);
  const unit = heatUnit(units);
  return (
    <ChartFrame
      title={`House ${c.house} against house ${control}`}
      caption={`Heat a day, ${unit}, against degrees warmer inside than outside. Open dots and the dashed line: house ${control}, as it stands. Full dots and line: house ${c.house} with ${inSentence(told(c.retrofitTitle, units))} in use; crosses: nights broken or forgotten, which stay in.`}
      table={{
        heads: ['day', `outside, ${units === 'us' ? 'F' : 'C'}`, `control, ${unit}`, `treated, ${unit}`, 'state', 'left out'],
        rows: c.nights.map((n) => [
          n.on,
          Math.round(units === 'us' ? n.outsideC * 1.8 + 32 : n.outsideC),
          scaleHeat(n.controlKwhPerDay).toFixed(2),
          scaleHeat(n.treatedKwhPerDay).toFixed(2),
          n.state.toLowerCase().replace('_', ' '),
          n.leftOut ?? '',
        ]),
      }}
    >
      <div ref={frame}>
        <svg
          width={width}
          height={HEIGHT}
          viewBox={`0 0 ${String(width)} ${String(HEIGHT)}`}
          role="img"
          aria-label="heat a day against the lift, with fitted lines"
        >
          {Array.from({ length: 5 }, (_, i) => i * step)
            .filter((v) => v <= scaleHeat(most) * 1.02)
            .map((v) => {
              const at = y(units === 'us' ? v * 293.07107 : v * 1000);
              return (
                <g key={v}>
                  <line x1={LEFT} x2={width - right} y1={at} y2={at} stroke="var(--rule)" />
                  <text x={LEFT - 8} y={at + 4} textAnchor="end">
                    {Number(v.toFixed(2))}
                  </text>
                </g>
              );
            })}
          {Array.from({ length: 9 }, (_, i) => i * 10)
            .filter((d) => d >= from * degree && d <= to * degree)
            .map((d) => (
              <text key={d} x={x(d / degree)} y={HEIGHT - BOTTOM + 20} textAnchor="middle">
                {d}
              </text>
            ))}
          <text x={(LEFT + width - right) / 2} y={HEIGHT - 6} textAnchor="middle">
            {units === 'us' ? 'F' : 'K'} warmer inside than outside
          </text>
          {counted.map((n) => (
            <circle key={`c${n.on}`} cx={x(n.controlLiftK)} cy={y(n.controlKwhPerDay)} r={2.6} fill="none" stroke="var(--quiet)" />
          ))}
          {inUse.map((n) =>
            n.state === 'BROKEN' ? (
              <path
                key={`t${n.on}`}
                d={`M${String(x(n.treatedLiftK) - 4)} ${String(y(n.treatedKwhPerDay) - 4)}l8 8m0 -8l-8 8`}
                stroke="var(--warn)"
                strokeWidth={1.75}
              />
            ) : (
              <circle key={`t${n.on}`} cx={x(n.treatedLiftK)} cy={y(n.treatedKwhPerDay)} r={2.6} fill="var(--accent)" />
            ),
          )}
          {line(c.controlLine, true)}
          {line(c.treatedLine, false)}
          <text
            className="strong halo"
            x={narrow ? width - right : width - right + 8}
            y={narrow ? endControl - 10 : endControl + 4}
            textAnchor={narrow ? 'end' : 'start'}
          >
            {control}, as it stands
          </text>
          <text
            className="strong halo"
            x={narrow ? width - right : width - right + 8}
            y={Math.max(endTreated, endControl + 18) + (narrow ? 22 : 4)}
            textAnchor={narrow ? 'end' : 'start'}
            fill="var(--accent)"
          >
            {c.house}, {inSentence(c.retrofitTitle.split(',')[0] ?? '')}
          </text>
        </svg>
      </div>
      <p className="small quiet">
        {countOf(Math.round(c.nightsInUse), 'night')} in use, {Math.round(c.nightsIdle)} idle; {heat(c.savedKwh.value, units)} {unit} of
        heat saved over the nights in use ({heat(c.savedKwh.low, units)} to {heat(c.savedKwh.high, units)}).
      </p>
    </ChartFrame>
  );
}

function niceStep(raw: number): number {
  const scale = 10 ** Math.floor(Math.log10(Math.max(raw, 1e-9)));
  return [1, 2, 5, 10].map((m) => m * scale).find((s) => s >= raw) ?? raw;
}
