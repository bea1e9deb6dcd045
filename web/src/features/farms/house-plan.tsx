import { heat, heatUnit, length } from '../../lib/units/format.ts';
import { Arrow, arrowLength, Dimension, Label } from './drawing-parts.tsx';
import type { DrawingProps } from './house-drawing.tsx';

interface Props extends DrawingProps {
  width: number;
  sectionScale: number;
  perKwh: number;
  narrow: boolean;
}

const BOW_M = 1.2192;

/** The plan, seen from above and to scale: length, bays, and the heat through both ends. */
export function HousePlan({ house: g, standing, chosen, units, width, sectionScale, perKwh, narrow }: Props) {
  const end = (kwh: number) => (kwh / 2) * perKwh;
  const reach = arrowLength(end(standing.endWallsKwh), 12) + 4;
  const scale = Math.min((width - 2 * Math.max(reach, narrow ? 30 : 84)) / g.lengthM, (narrow ? 110 : 150) / g.overallWidthM);
  const [w, h] = [g.lengthM * scale, g.overallWidthM * scale];
  const [left, top] = [(width - w) / 2, narrow ? 44 : 28];
  const bows = BOW_M * scale >= 4 ? Math.round(g.lengthM / BOW_M) : 0;
  const bottom = top + h;
  const words = `Plan to scale, ${length(g.lengthM, units)} long and ${length(g.overallWidthM, units)} wide. Both ends lose ${heat(standing.endWallsKwh, units)} ${heatUnit(units)}.`;
  return (
    <svg
      width={width}
      height={bottom + 44}
      viewBox={`0 0 ${String(width)} ${String(bottom + 44)}`}
      role="img"
      aria-label={words}
      style={{ display: 'block' }}
    >
      <text x={2} y={14}>
        Seen from above, {(scale / sectionScale).toFixed(2)} of the size
      </text>
      <Label
        x={narrow ? 2 : width - 2}
        y={narrow ? 32 : 14}
        end={!narrow}
        name={`Both ends ${heat(standing.endWallsKwh, units)}${chosen ? `, with it ${heat(chosen.endWallsKwh, units)}` : ''}`}
      />
      <g stroke="var(--rule)">
        {Array.from({ length: Math.max(0, bows - 1) }, (_, i) => left + (w * (i + 1)) / bows).map((x) => (
          <line key={x} x1={x} x2={x} y1={top} y2={bottom} />
        ))}
      </g>
      <g stroke="var(--quiet)" strokeDasharray="6 4">
        {Array.from({ length: Math.max(0, g.bays - 1) }, (_, i) => top + (h * (i + 1)) / g.bays).map((y) => (
          <line key={y} x1={left} x2={left + w} y1={y} y2={y} />
        ))}
      </g>
      <rect x={left} y={top} width={w} height={h} fill="none" stroke="var(--ink)" strokeWidth={2} />
      {[-90, 90].map((turn) => (
        <Arrow
          key={turn}
          at={[turn < 0 ? left : left + w, top + h / 2]}
          turn={turn}
          outline={end(standing.endWallsKwh)}
          solid={chosen && end(chosen.endWallsKwh)}
          shaft={12}
        />
      ))}
      <Dimension from={[left, bottom + 24]} to={[left + w, bottom + 24]} text={length(g.lengthM, units)} />
    </svg>
  );
}
