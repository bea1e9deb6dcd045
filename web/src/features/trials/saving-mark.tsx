const WIDTH = 180;

/** A share with its 90 % interval on a scale of 0 to `most`. */
export function SavingMark({
  value,
  low,
  high,
  most = 0.6,
  zero = 0,
}: {
  value: number;
  low: number;
  high: number;
  most?: number;
  zero?: number;
}) {
  const x = (v: number) => 6 + (Math.min(most, Math.max(zero, v)) - zero) * ((WIDTH - 12) / (most - zero));
  return (
    <svg width={WIDTH} height={36} role="img" aria-label={`${value.toFixed(2)}, between ${low.toFixed(2)} and ${high.toFixed(2)}`}>
      {[0, 0.25, 0.5, 0.75, 1].map((t) => (
        <line key={t} x1={x(zero + t * (most - zero))} x2={x(zero + t * (most - zero))} y1={0} y2={36} stroke="var(--rule)" />
      ))}
      <line x1={x(low)} x2={x(high)} y1={18} y2={18} stroke="var(--ink)" strokeWidth={1.5} />
      <line x1={x(low)} x2={x(low)} y1={14} y2={22} stroke="var(--ink)" strokeWidth={1.5} />
      <line x1={x(high)} x2={x(high)} y1={14} y2={22} stroke="var(--ink)" strokeWidth={1.5} />
      <circle cx={x(value)} cy={18} r={4.75} fill="var(--ink)" stroke="var(--page)" />
    </svg>
  );
}
