import { roundScale } from './scale.ts';
import type { Fuel } from '../../lib/units/format.ts';
import { dollars, fuelColour } from '../../lib/units/format.ts';

interface Spread {
  p25: number;
  p50: number;
  p75: number;
}
type Ends = { p5: number; p95: number } | { p10: number; p90: number };

const WIDTH = 240;
const PAD = 6;

/** Round marks of the scale that lie on it with room for their words. */
const ticksOf = (most: number): number[] => roundScale(0, most, 3).ticks.filter((t) => t <= most * 0.92);

/** A season's cost: thin between its ends (one in ten, or one in twenty, lies beyond each), thick the middle half, a dot the middle; every row on one scale from $0. */
export function CostInterval({ cost, most, fuel }: { cost: Spread & Ends; most: number; fuel: Fuel }) {
  const [low, high, beyond] = 'p5' in cost ? [cost.p5, cost.p95, 'twenty'] : [cost.p10, cost.p90, 'ten'];
  const x = (usd: number) => PAD + (Math.max(0, usd) / most) * (WIDTH - 2 * PAD);
  const words = `middle ${dollars(cost.p50)}, one season in ${beyond} under ${dollars(low)}, one in ${beyond} over ${dollars(high)}`;
  const ends = [low, high];
  return (
    <svg width={WIDTH} height={36} viewBox={`0 0 ${String(WIDTH)} 36`} role="img" aria-label={words}>
      <title>{words}</title>
      {ticksOf(most).map((t) => (
        <line key={t} x1={x(t)} x2={x(t)} y1={0} y2={36} stroke="var(--rule)" />
      ))}
      <g stroke={fuelColour[fuel]} strokeWidth={1.5}>
        <line x1={x(low)} x2={x(high)} y1={18} y2={18} />
        {ends.map((e) => (
          <line key={e} x1={x(e)} x2={x(e)} y1={14} y2={22} />
        ))}
      </g>
      <line x1={x(cost.p25)} x2={x(cost.p75)} y1={18} y2={18} stroke={fuelColour[fuel]} strokeWidth={7} />
      <circle cx={x(cost.p50)} cy={18} r={4.75} fill={fuelColour[fuel]} stroke="var(--page)" />
    </svg>
  );
}

/** The scale of the marks, read once in the head. */
export function CostHead({ most }: { most: number }) {
  return (
    <>
      <span className="hidden">cost of the season as an interval</span>
      <svg width={WIDTH} height={18} viewBox={`0 0 ${String(WIDTH)} 18`} aria-hidden="true">
        {ticksOf(most).map((t, i) => (
          <text key={t} x={PAD + (t / most) * (WIDTH - 2 * PAD)} y={12} textAnchor={i === 0 ? 'start' : 'middle'}>
            {dollars(t, 2)}
          </text>
        ))}
      </svg>
    </>
  );
}
