import { Area, CartesianGrid, ComposedChart, Line, ReferenceLine, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';

export interface FanPoint {
  name: string;
  p10: number;
  p25: number;
  p50: number;
  p75: number;
  p90: number;
  one?: number;
  /** Place on the axis where the points are not evenly spaced. */
  at?: number;
}

interface Props {
  points: FanPoint[];
  colour?: string;
  format: (v: number) => string;
  line?: { at: number; name: string };
  height?: number;
}

/** A fan: one in ten to nine in ten, the middle half, the middle; one single future dotted. */
export function FanChart({ points, colour = 'var(--ink)', format, line, height = 340 }: Props) {
  const data = points.map((p) => ({ ...p, outer: [p.p10, p.p90], inner: [p.p25, p.p75] }));
  const last = points.at(-1);
  return (
    <>
      <div style={{ height }} className="small">
        <ResponsiveContainer initialDimension={{ width: 600, height }}>
          <ComposedChart
            data={data}
            margin={{ top: 16, right: 12, bottom: 4, left: 12 }}
            accessibilityLayer
            title="the same numbers stand in the table below"
          >
            <CartesianGrid vertical={false} stroke="var(--rule)" />
            {points[0]?.at === undefined ? (
              <XAxis dataKey="name" stroke="var(--ink)" tickLine={false} interval="preserveStartEnd" minTickGap={40} />
            ) : (
              <XAxis
                dataKey="at"
                type="number"
                domain={[0, 'dataMax']}
                tickFormatter={format}
                stroke="var(--ink)"
                tickLine={false}
                tickCount={5}
              />
            )}
            <YAxis stroke="var(--ink)" axisLine={false} tickLine={false} tickCount={5} tickFormatter={format} width={76} />
            <ReferenceLine y={0} stroke="var(--ink)" />
            <Area
              dataKey="outer"
              fill={colour}
              fillOpacity="var(--band-outer)"
              stroke={colour}
              strokeWidth={0.75}
              isAnimationActive={false}
            />
            <Area dataKey="inner" fill={colour} fillOpacity="var(--band-inner)" stroke="none" isAnimationActive={false} />
            <Line dataKey="p50" stroke={colour} strokeWidth={2} dot={false} isAnimationActive={false} />
            {points[0]?.one !== undefined && (
              <Line dataKey="one" stroke={colour} strokeDasharray="2 3" dot={false} isAnimationActive={false} />
            )}
            {line && (
              <ReferenceLine
                y={line.at}
                stroke="var(--accent)"
                strokeWidth={2}
                label={{ value: line.name, position: 'insideTopLeft', fill: 'var(--accent)', fontWeight: 600 }}
              />
            )}
            <Tooltip content={({ payload }) => <Sentence point={payload?.[0]?.payload as FanPoint | undefined} format={format} />} />
          </ComposedChart>
        </ResponsiveContainer>
      </div>
      {last && (
        <p className="quiet small" style={{ margin: 0 }}>
          {last.name}: one in ten over {format(last.p90)}, middle <b style={{ color: 'var(--ink)' }}>{format(last.p50)}</b>, one in ten
          under {format(last.p10)}
          {last.one !== undefined && '. Dotted: one future, as it might run'}.
        </p>
      )}
    </>
  );
}

function Sentence({ point, format }: { point?: FanPoint; format: (v: number) => string }) {
  if (!point) return null;
  return (
    <div style={{ background: 'var(--page)', border: '1px solid var(--rule)', padding: '4px 8px' }}>
      {point.name}: middle {format(point.p50)}, between {format(point.p10)} and {format(point.p90)} in eight of ten futures.
    </div>
  );
}
