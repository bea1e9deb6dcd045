import { heat, heatUnit, length, type UnitSystem } from '../../lib/units/format.ts';

interface Geometry {
  ridgeM: number;
  sideWallM: number;
  overallWidthM: number;
  lengthM: number;
  curtainHeightM: number;
  roofFilms: number;
  profile: readonly { x: number; y: number }[];
}

export interface Losses {
  roofKwh: number;
  sideWallsKwh: number;
  endWallsKwh: number;
  perimeterKwh: number;
  airKwh: number;
  solarUsedKwh: number;
  demandKwh: number;
}

const MARGIN = { left: 110, right: 150, top: 110, bottom: 90 };

/** The cross-section to scale from the house's own dimensions; arrows as wide as the loss, outline as it stands, solid with the option. */
export function HouseDrawing({
  g,
  standing,
  chosen,
  withFoam,
  withCurtain,
  units,
}: {
  g: Geometry;
  standing: Losses;
  chosen?: Losses;
  withFoam: boolean;
  withCurtain: boolean;
  units: UnitSystem;
}) {
  const scale = Math.min(560 / g.overallWidthM, 300 / g.ridgeM);
  const [w, h] = [g.overallWidthM * scale, g.ridgeM * scale];
  const [width, height] = [w + MARGIN.left + MARGIN.right, h + MARGIN.top + MARGIN.bottom];
  const ground = MARGIN.top + h;
  const x = (m: number) => MARGIN.left + m * scale;
  const y = (m: number) => ground - m * scale;
  const path = (inset: number) =>
    g.profile
      .map((p, i) => {
        const cx = x(p.x) + (p.x < g.overallWidthM / 2 ? inset : -inset);
        return `${i === 0 ? 'M' : 'L'}${cx.toFixed(1)} ${Math.min(ground, y(p.y) + (i === 0 || i === g.profile.length - 1 ? 0 : inset)).toFixed(1)}`;
      })
      .join(' ');
  const biggest = Math.max(standing.roofKwh, standing.sideWallsKwh, standing.endWallsKwh, standing.airKwh, standing.perimeterKwh, 1);
  const wide = (kwh: number) => (kwh / biggest) * Math.min(110, w / 4);
  const middle = x(g.overallWidthM / 2);
  const label = (kwh: number, other?: number) => `${heat(kwh, units)}${other === undefined ? '' : `, with it ${heat(other, units)}`}`;
  const words = `Cross-section, ${length(g.overallWidthM, units)} wide, ${length(g.ridgeM, units)} high. Roof loses ${heat(standing.roofKwh, units)} ${heatUnit(units)}, air leaks ${heat(standing.airKwh, units)}.`;
  const curtainHalf = halfWidthAt(g, g.curtainHeightM);
  return (
    <svg viewBox={`0 0 ${String(width)} ${String(height)}`} width="100%" style={{ maxHeight: 560 }} role="img" aria-label={words}>
      {withFoam && <path d={path(4)} fill="none" stroke="var(--quiet)" strokeWidth={7} strokeDasharray="1 3" opacity={0.7} />}
      <Arrow at={[middle, y(g.ridgeM) + 8]} to="up" outline={wide(standing.roofKwh)} solid={chosen && wide(chosen.roofKwh)} />
      <Arrow
        at={[x(g.overallWidthM) - 4, y(g.ridgeM * 0.35)]}
        to="right"
        outline={wide(standing.airKwh)}
        solid={chosen && wide(chosen.airKwh)}
        dashed
      />
      <Arrow
        at={[x(0) + 4, y(g.ridgeM * 0.1)]}
        to="left"
        outline={wide(standing.sideWallsKwh)}
        solid={chosen && wide(chosen.sideWallsKwh)}
      />
      <Arrow
        at={[x(g.overallWidthM * 0.2), ground + 2]}
        to="down"
        outline={wide(standing.perimeterKwh)}
        solid={chosen && wide(chosen.perimeterKwh)}
      />
      <path d={path(0)} fill="none" stroke="var(--ink)" strokeWidth={2} />
      {g.roofFilms === 2 && <path d={path(7)} fill="none" stroke="var(--ink)" strokeWidth={1.25} strokeDasharray="7 2.5" />}
      <line x1={x(0) - 30} x2={x(g.overallWidthM) + 30} y1={ground} y2={ground} stroke="var(--ink)" strokeWidth={1.5} />
      <line
        x1={middle - curtainHalf * scale}
        x2={middle + curtainHalf * scale}
        y1={y(g.curtainHeightM)}
        y2={y(g.curtainHeightM)}
        stroke="var(--ink)"
        strokeWidth={withCurtain ? 2.5 : 1.25}
        strokeDasharray={withCurtain ? undefined : '8 3 2 3'}
      />
      <text x={middle} y={y(g.curtainHeightM) - 6} textAnchor="middle">
        {withCurtain ? 'night curtain' : 'curtain line; none fitted'}, {length(g.curtainHeightM, units)}
      </text>
      <text className="strong" x={middle + 66} y={44}>
        Roof {label(standing.roofKwh, chosen?.roofKwh)}
      </text>
      <text className="strong" x={x(g.overallWidthM) + 20} y={y(g.ridgeM * 0.35) - 40}>
        Air leaks
      </text>
      <text x={x(g.overallWidthM) + 20} y={y(g.ridgeM * 0.35) - 24}>
        {label(standing.airKwh, chosen?.airKwh)}
      </text>
      <text className="strong" x={2} y={y(g.ridgeM * 0.1) - 62}>
        Sides
      </text>
      <text x={2} y={y(g.ridgeM * 0.1) - 46}>
        {label(standing.sideWallsKwh, chosen?.sideWallsKwh)}
      </text>
      <text className="strong" x={x(g.overallWidthM * 0.2) + 26} y={ground + 26}>
        Ground, at the edge {label(standing.perimeterKwh, chosen?.perimeterKwh)}
      </text>
      <text className="strong" x={6} y={40}>
        Sun that counts {label(standing.solarUsedKwh, chosen?.solarUsedKwh)}
      </text>
      <text className="strong" x={6} y={60}>
        Ends, both {label(standing.endWallsKwh, chosen?.endWallsKwh)}
      </text>
      <Dimension
        from={[x(0), ground + 58]}
        to={[x(g.overallWidthM), ground + 58]}
        text={`${length(g.overallWidthM, units)}; ${length(g.lengthM, units)} long`}
      />
      <Dimension from={[x(0) - 46, y(g.ridgeM)]} to={[x(0) - 46, ground]} text={length(g.ridgeM, units)} upright />
    </svg>
  );
}

function halfWidthAt(g: Geometry, height: number): number {
  const left = g.profile.slice(0, Math.ceil(g.profile.length / 2));
  const at = left.findIndex((p) => p.y >= height);
  const point = left[at];
  return Math.max(0, g.overallWidthM / 2 - (point?.x ?? 0));
}

function Arrow({
  at,
  to,
  outline,
  solid,
  dashed,
}: {
  at: [number, number];
  to: 'up' | 'right' | 'left' | 'down';
  outline: number;
  solid?: number | undefined;
  dashed?: boolean;
}) {
  const turn = { up: 0, right: 90, down: 180, left: 270 }[to];
  const shape = (half: number, len: number) =>
    `M${String(-half)} 0 V${String(-len)} H${String(-half * 1.5 - 3)} L0 ${String(-len - half - 8)} L${String(half * 1.5 + 3)} ${String(-len)} H${String(half)} V0 Z`;
  return (
    <g transform={`translate(${String(at[0])} ${String(at[1])}) rotate(${String(turn)})`}>
      <path
        d={shape(Math.max(1, outline / 2), 26)}
        fill="var(--bad)"
        fillOpacity={0.13}
        stroke="var(--bad)"
        strokeDasharray={dashed ? '3 2' : undefined}
      />
      {solid !== undefined && <path d={shape(Math.max(1, solid / 2), 26)} fill="var(--bad)" fillOpacity={0.78} />}
    </g>
  );
}

function Dimension({ from, to, text, upright }: { from: [number, number]; to: [number, number]; text: string; upright?: boolean }) {
  const mid = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
  const stroke = ([cx, cy]: [number, number]) => <line x1={cx - 5} y1={cy + 5} x2={cx + 5} y2={cy - 5} strokeWidth={1.3} />;
  return (
    <g>
      <g stroke="var(--ink)" strokeWidth={0.8}>
        <line x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />
        {stroke(from)}
        {stroke(to)}
      </g>
      <text
        x={mid[0]}
        y={mid[1] - 6}
        textAnchor="middle"
        transform={upright ? `rotate(-90 ${String(mid[0])} ${String(mid[1])})` : undefined}
      >
        {text}
      </text>
    </g>
  );
}
