import { fuelColour, fuelName, type Fuel } from '../../lib/units/format.ts';

const WIDTH = 220;
const HEIGHT = 44;
const LOW = 0.45;
const HIGH = 2.2;

interface Factors {
  fuel: Fuel;
  bySeason: readonly number[];
}

const y = (factor: number) => 4 + ((Math.log(HIGH) - Math.log(factor)) / (Math.log(HIGH) - Math.log(LOW))) * (HEIGHT - 8);

/** Factors of a case by season as steps around 1; fuels that move alike share one line in ink. */
export function FactorLine({ factors, label }: { factors: readonly Factors[]; label: string }) {
  const alike = factors.every((f) => f.bySeason.join() === factors[0]?.bySeason.join());
  const lines = alike ? factors.slice(0, 1) : factors;
  const seasons = factors[0]?.bySeason.length ?? 0;
  const step = WIDTH / Math.max(1, seasons);
  const words = lines
    .map((f) => {
      const name = alike ? factors.map((x) => fuelName[x.fuel]).join(', ') : fuelName[f.fuel];
      const moved = f.bySeason.filter((v) => v !== 1);
      const [low, high] = [Math.min(...moved), Math.max(...moved)];
      return `${name} times ${low.toFixed(2)}${high - low > 0.005 ? ` to ${high.toFixed(2)}` : ''} in ${String(moved.length)} of ${String(seasons)} seasons`;
    })
    .join('; ');
  return (
    <svg width={WIDTH} height={HEIGHT} role="img" aria-label={`${label}: ${words}`}>
      <title>{words}</title>
      <line x1={0} x2={WIDTH} y1={y(1)} y2={y(1)} stroke="var(--rule)" />
      {lines.map((f) => (
        <path
          key={f.fuel}
          d={f.bySeason
            .map(
              (v, i) =>
                `${i === 0 ? 'M' : 'L'}${(i * step).toFixed(1)} ${y(v).toFixed(1)} L${((i + 1) * step).toFixed(1)} ${y(v).toFixed(1)}`,
            )
            .join(' ')}
          fill="none"
          stroke={alike && factors.length > 1 ? 'var(--ink)' : fuelColour[f.fuel]}
          strokeWidth={2}
        />
      ))}
    </svg>
  );
}
