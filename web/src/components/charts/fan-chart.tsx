import { useRef } from 'react';
import {
  Area,
  CartesianGrid,
  ComposedChart,
  Line,
  ReferenceDot,
  ReferenceLine,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import { FanLabels, LABEL_ROOM, type FanLabel } from './fan-labels.tsx';
import { roundScale } from './scale.ts';
import { useWidth } from './use-width.ts';

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
  /** The line that decides, across the picture. */
  line?: { at: number; name: string } | undefined;
  /** The line that decides, from foot to head: a place on the axis. */
  upright?: { at: number; name: string } | undefined;
  /** Where the middle meets the deciding line. */
  met?: { name: string; words: string } | undefined;
  axis?: string;
  height?: number;
}

const TOP = 24;
const AXIS = 30;

/** A fan: one in ten to nine in ten, the middle half, the middle; one single future dotted. Levels are named at the right where there is room. */
export function FanChart({ points, colour = 'var(--ink)', format, line, upright, met, axis, height = 340 }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, 600);
  const data = points.map((p) => ({ ...p, outer: [p.p10, p.p90], inner: [p.p25, p.p75] }));
  const last = points.at(-1);
  const all = points.flatMap((p) => [p.p10, p.p90, p.one ?? 0]);
  const scale = roundScale(Math.min(...all, line?.at ?? 0), Math.max(...all, line?.at ?? 0));
  const roomy = width >= 480;
  const spaced = points[0]?.at !== undefined;
  const labels: FanLabel[] = last
    ? [
        { at: last.p90, words: 'one in ten over' },
        { at: last.p75, words: 'one in four over' },
        { at: last.p50, words: 'middle', strong: true },
        { at: last.p25, words: 'one in four under' },
        { at: last.p10, words: 'one in ten under' },
        ...(line ? [{ at: line.at, words: line.name, accent: true }] : []),
      ]
    : [];
  const metPoint = met && points.find((p) => p.name === met.name);
  return (
    <>
      <div ref={frame} style={{ height, position: 'relative' }} className="small">
        <ResponsiveContainer initialDimension={{ width: 600, height }}>
          <ComposedChart
            data={data}
            margin={{ top: TOP, right: roomy ? LABEL_ROOM : 12, bottom: 0, left: 4 }}
            accessibilityLayer
            title="the same numbers stand in the table below"
          >
            <CartesianGrid vertical={false} stroke="var(--rule)" />
            <XAxis
              dataKey={spaced ? 'at' : 'name'}
              height={AXIS}
              stroke="var(--ink)"
              tickLine={false}
              {...(spaced
                ? { type: 'number' as const, domain: [0, 'dataMax'] as [number, string], tickFormatter: format, tickCount: roomy ? 5 : 3 }
                : { interval: 'preserveStartEnd' as const, minTickGap: 40 })}
            />
            <YAxis
              stroke="var(--ink)"
              axisLine={false}
              tickLine={false}
              domain={[scale.low, scale.high]}
              ticks={scale.ticks}
              tickFormatter={format}
              width={76}
            />
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
            {line && <ReferenceLine y={line.at} stroke="var(--accent)" strokeWidth={2} />}
            {upright && (
              <ReferenceLine
                x={upright.at}
                stroke="var(--accent)"
                strokeWidth={2}
                label={{ value: upright.name, position: 'top', fill: 'var(--accent)', fontWeight: 600 }}
              />
            )}
            {metPoint && (
              <ReferenceDot x={metPoint.name} y={metPoint.p50} r={5.5} fill="var(--accent)" stroke="var(--page)" strokeWidth={1} />
            )}
            <Tooltip content={({ payload }) => <Sentence point={payload?.[0]?.payload as FanPoint | undefined} format={format} />} />
          </ComposedChart>
        </ResponsiveContainer>
        {roomy && <FanLabels labels={labels} scale={scale} top={TOP} bottom={height - AXIS} width={width} />}
      </div>
      {last && (
        <p className="quiet small" style={{ margin: 0 }}>
          {axis && `Across: ${axis}. `}
          {met && <b style={{ color: 'var(--accent)' }}>{met.words}. </b>}
          {line && !roomy && <b style={{ color: 'var(--accent)' }}>Green line: {line.name}. </b>}
          {spaced ? format(last.at ?? 0) : last.name}: one in ten over {format(last.p90)}, middle{' '}
          <b style={{ color: 'var(--ink)' }}>{format(last.p50)}</b>, one in ten under {format(last.p10)}
          {last.one !== undefined && '. Dotted: one future, as it might run'}.
        </p>
      )}
    </>
  );
}

function Sentence({ point, format }: { point?: FanPoint | undefined; format: (v: number) => string }) {
  if (!point) return null;
  return (
    <div style={{ background: 'var(--page)', border: '1px solid var(--rule)', padding: '4px 8px' }}>
      {point.at === undefined ? point.name : format(point.at)}: middle {format(point.p50)}, between {format(point.p10)} and{' '}
      {format(point.p90)} in eight of ten futures.
    </div>
  );
}
