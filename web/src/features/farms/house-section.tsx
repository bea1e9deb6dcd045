import { heat, heatUnit, length } from '../../lib/units/format.ts';
import { Arrow, arrowLength, Dimension, Ground, headHalf, Label } from './drawing-parts.tsx';
import type { DrawingProps } from './house-drawing.tsx';
import { crossings, flank, inside, type Point } from './outline.ts';

interface Props extends DrawingProps {
  width: number;
  scale: number;
  perKwh: number;
  narrow: boolean;
}

const SHAFT = 24;

/** The cross-section: films, fill, curtain line, heater, and the heat by arrows as wide as the loss. */
export function HouseSection({ house: g, standing, chosen, withFoam, withCurtain, units, width, scale, perKwh, narrow }: Props) {
  const wide = (kwh: number) => kwh * perKwh;
  const roofUp = arrowLength(wide(standing.roofKwh), SHAFT);
  const top = roofUp + 14;
  const ground = top + g.ridgeM * scale;
  const left = (width - g.overallWidthM * scale) / 2;
  const [x, y] = [(m: number) => left + m * scale, (m: number) => ground - m * scale];
  const [middle, right] = [x(g.overallWidthM / 2), x(g.overallWidthM)];
  const path = (points: readonly Point[]) =>
    points.map((p, i) => `${i === 0 ? 'M' : 'L'}${x(p.x).toFixed(1)} ${y(p.y).toFixed(1)}`).join(' ');
  const gap = Math.max(g.filmGapM, 5 / scale);
  const air = flank(g.profile, g.ridgeM * 0.55, 'right');
  const sun = flank(g.profile, g.ridgeM * 0.8, 'left');
  const curtain = crossings(g.profile, g.curtainHeightM);
  const tall = g.ridgeM * scale > 150;
  const figure = (kwh: number) => heat(kwh, units);
  const second = (of: (h: typeof standing) => number, words = 'with it ') => chosen && `${words}${figure(of(chosen))}`;
  const sideAt = Math.min(g.ridgeM * 0.12, 0.9);
  const [airY, sideY] = [Math.min(y(air.at.y) - (narrow ? 44 : 6), ground - 66), ground - 20];
  const groundDown = arrowLength(wide(standing.perimeterKwh / 2), 8);
  const dimY = ground + groundDown + 26;
  const height = dimY + (narrow ? 8 : 16);
  const words = `Cross-section to scale, ${length(g.overallWidthM, units)} wide, ${length(g.ridgeM, units)} high. In ${heatUnit(units)} a season: roof ${figure(standing.roofKwh)}, side walls ${figure(standing.sideWallsKwh)}, air leaks ${figure(standing.airKwh)}, ground ${figure(standing.perimeterKwh)}, sun that counts ${figure(standing.solarUsedKwh)}. The same figures stand in the heat ledger.`;
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${String(width)} ${String(height)}`}
      role="img"
      aria-label={words}
      style={{ display: 'block' }}
    >
      {withFoam && (
        <path
          d={path(inside(g.profile, gap / 2))}
          fill="none"
          stroke="var(--quiet)"
          strokeWidth={gap * scale}
          strokeDasharray="2 2"
          opacity={0.55}
        />
      )}
      <Arrow at={[middle, y(g.ridgeM) + 8]} turn={0} outline={wide(standing.roofKwh)} solid={chosen && wide(chosen.roofKwh)} />
      <Arrow
        at={[x(air.at.x) - 4, y(air.at.y)]}
        turn={air.turn}
        outline={wide(standing.airKwh)}
        solid={chosen && wide(chosen.airKwh)}
        shaft={16}
        dashed
      />
      {[-90, 90].map((turn) => (
        <Arrow
          key={turn}
          at={[turn < 0 ? x(0) : right, y(sideAt)]}
          turn={turn}
          outline={wide(standing.sideWallsKwh / 2)}
          solid={chosen && wide(chosen.sideWallsKwh / 2)}
          shaft={12}
        />
      ))}
      {[0.12, 0.88].map((at) => (
        <Arrow
          key={at}
          at={[x(g.overallWidthM * at), ground + 1]}
          turn={180}
          outline={wide(standing.perimeterKwh / 2)}
          solid={chosen && wide(chosen.perimeterKwh / 2)}
          shaft={8}
        />
      ))}
      <SunArrow at={[x(sun.at.x), y(sun.at.y)]} turn={sun.turn} wide={wide(standing.solarUsedKwh)} />
      <path d={path(g.profile)} fill="none" stroke="var(--ink)" strokeWidth={2} />
      {g.roofFilms >= 2 && (
        <path d={path(inside(g.profile, gap))} fill="none" stroke="var(--ink)" strokeWidth={1.25} strokeDasharray="7 2.5" />
      )}
      <Ground from={Math.max(0, x(0) - 40)} to={Math.min(width, right + 40)} y={ground} />
      {curtain.map((from, i) =>
        i % 2 === 0 && curtain[i + 1] !== undefined ? (
          <line
            key={from}
            x1={x(from)}
            x2={x(curtain[i + 1] ?? from)}
            y1={y(g.curtainHeightM)}
            y2={y(g.curtainHeightM)}
            stroke="var(--ink)"
            strokeWidth={withCurtain ? 2.5 : 1.25}
            strokeDasharray={withCurtain ? undefined : '8 3 2 3'}
          />
        ) : null,
      )}
      {tall && (
        <text x={middle} y={y(g.curtainHeightM) - 7} textAnchor="middle">
          {withCurtain ? 'night curtain' : narrow ? 'curtain line' : 'curtain line; none with this choice'},{' '}
          {length(g.curtainHeightM, units)}
        </text>
      )}
      {tall && <Heater x={middle - 50} y={y(g.curtainHeightM) + 14} />}
      {tall && (
        <Label
          x={middle - 10}
          y={y(g.curtainHeightM) + 30}
          name={`Heater ${figure(standing.demandKwh)}`}
          second={second((h) => h.demandKwh)}
        />
      )}
      <Label
        x={middle + headHalf(wide(standing.roofKwh)) + 8}
        y={24}
        name={`Roof ${figure(standing.roofKwh)}`}
        second={second((h) => h.roofKwh)}
      />
      <Label x={2} y={24} name={`Sun ${figure(standing.solarUsedKwh)}`} second={narrow ? 'that counts' : 'that counts, by day'} />
      <Label
        x={width - 2}
        y={airY}
        end
        name={narrow ? `Leaks ${figure(standing.airKwh)}` : `Air leaks ${figure(standing.airKwh)}`}
        second={second((h) => h.airKwh)}
      />
      {narrow ? (
        <Label x={2} y={sideY - 44} name={`Sides ${figure(standing.sideWallsKwh)}`} second={second((h) => h.sideWallsKwh, '')} />
      ) : (
        <Label x={width - 2} y={sideY} end name={`Both sides ${figure(standing.sideWallsKwh)}`} second={second((h) => h.sideWallsKwh)} />
      )}
      <text className="strong" x={middle} y={ground + 22} textAnchor="middle">
        Ground, at the edge {figure(standing.perimeterKwh)}
      </text>
      {narrow ? (
        <text x={width / 2} y={dimY} textAnchor="middle" fill="var(--ink)">
          {length(g.overallWidthM, units)} wide, {length(g.ridgeM, units)} high
        </text>
      ) : (
        <>
          <Dimension from={[x(0), dimY]} to={[right, dimY]} text={length(g.overallWidthM, units)} />
          <Dimension from={[x(0) - 52, y(g.ridgeM)]} to={[x(0) - 52, ground]} text={length(g.ridgeM, units)} upright />
        </>
      )}
    </svg>
  );
}

/** Sun comes in: the arrow's point rests on the film. */
function SunArrow({ at, turn, wide }: { at: readonly [number, number]; turn: number; wide: number }) {
  const long = arrowLength(wide, 16);
  const way = ((turn - 90) * Math.PI) / 180;
  return <Arrow at={[at[0] + long * Math.cos(way), at[1] + long * Math.sin(way)]} turn={turn + 180} outline={wide} shaft={16} hollow />;
}

function Heater({ x, y }: { x: number; y: number }) {
  return (
    <g stroke="var(--ink)" fill="var(--page)">
      <rect x={x} y={y} width={32} height={22} />
      <circle cx={x + 21} cy={y + 11} r={7} />
      <path
        d={`M${String(x + 16)} ${String(y + 6)} L${String(x + 26)} ${String(y + 16)} M${String(x + 26)} ${String(y + 6)} L${String(x + 16)} ${String(y + 16)}`}
      />
    </g>
  );
}
