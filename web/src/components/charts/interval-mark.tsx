export interface Payback {
  p10Season?: number | null;
  p25Season?: number | null;
  p50Season?: number | null;
  p75Season?: number | null;
  p90Season?: number | null;
  neverShare: number;
}

const WIDTH = 260;
const SCALE = 190;

/** When the money is back: thin from one in ten to nine in ten, thick the middle half, a dot the middle, hatched what never pays. */
export function IntervalMark({ payback, seasons = 15, rule }: { payback: Payback; seasons?: number; rule?: number }) {
  const x = (s: number) => 4 + (s / seasons) * (SCALE - 8);
  const end = x(seasons);
  const { p10Season: p10, p25Season: p25, p50Season: p50, p75Season: p75, p90Season: p90, neverShare } = payback;
  const never = Math.round(100 * neverShare);
  const words = `middle ${p50 ? `season ${String(p50)}` : 'never'}, nine in ten by ${p90 ? `season ${String(p90)}` : 'never'}, never in ${String(never)} of 100`;
  return (
    <svg width={WIDTH} height={36} viewBox={`0 0 ${String(WIDTH)} 36`} role="img" aria-label={words}>
      <title>{words}</title>
      {[0, 5, 10, 15]
        .filter((t) => t <= seasons)
        .map((t) => (
          <line key={t} x1={x(t)} x2={x(t)} y1={0} y2={36} stroke="var(--rule)" />
        ))}
      {rule !== undefined && <line x1={x(rule)} x2={x(rule)} y1={0} y2={36} stroke="var(--accent)" strokeDasharray="3 3" />}
      {p10 && (
        <g stroke="var(--ink)" strokeWidth={1.5}>
          <line x1={x(p10)} x2={p90 ? x(p90) : end} y1={18} y2={18} />
          <line x1={x(p10)} x2={x(p10)} y1={14} y2={22} />
          {p90 ? <line x1={x(p90)} x2={x(p90)} y1={14} y2={22} /> : <line x1={end} x2={end + 14} y1={18} y2={18} strokeDasharray="2 3" />}
        </g>
      )}
      {p25 && <line x1={x(p25)} x2={p75 ? x(p75) : end} y1={18} y2={18} stroke="var(--ink)" strokeWidth={7} />}
      {p50 && <circle cx={x(p50)} cy={18} r={4.75} fill="var(--ink)" stroke="var(--page)" />}
      <defs>
        <pattern id="hatch" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="4" stroke="var(--ink)" strokeWidth="1.2" />
        </pattern>
      </defs>
      {never > 0 && (
        <rect x={end + 16} y={12} width={Math.max(3, 0.4 * never)} height={12} fill="url(#hatch)" stroke="var(--ink)" strokeWidth={0.8} />
      )}
      <text x={end + 16 + (never > 0 ? Math.max(3, 0.4 * never) + 4 : 0)} y={23}>
        {never}
      </text>
    </svg>
  );
}

/** The scale of the marks, read once in the head. */
export function IntervalHead({ seasons = 15 }: { seasons?: number }) {
  const x = (s: number) => 4 + (s / seasons) * (SCALE - 8);
  return (
    <>
      <span className="hidden">payback in seasons, and never</span>
      <svg width={WIDTH} height={34} viewBox={`0 0 ${String(WIDTH)} 34`} aria-hidden="true">
        <text x={0} y={12}>
          payback, seasons
        </text>
        <text x={x(seasons) + 16} y={12}>
          never,
        </text>
        <text x={x(seasons) + 16} y={29}>
          of 100
        </text>
        {[0, 5, 10, 15]
          .filter((t) => t <= seasons)
          .map((t) => (
            <text key={t} x={x(t)} y={29} textAnchor={t === 0 ? 'start' : 'middle'}>
              {t}
            </text>
          ))}
      </svg>
    </>
  );
}
