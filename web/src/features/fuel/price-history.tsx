import { Area, CartesianGrid, ComposedChart, Line, ReferenceLine, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import { Link } from 'react-router';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { roundScale } from '../../components/charts/scale.ts';
import type { FuelQuery } from '../../lib/graphql/generated/graphql.ts';
import { fuelColour, fuelName, unitIn, usdPerUnitIn, type Fuel, type UnitSystem } from '../../lib/units/format.ts';

const YEARS = 12;

interface Point {
  name: string;
  recorded?: number;
  p50?: number;
  outer?: [number, number];
  inner?: [number, number];
}

const months = (from: string, to: string): string[] => {
  const [y = 0, m = 1] = from.split('-').map(Number);
  const out: string[] = [];
  for (let i = y * 12 + m - 1; out.length < 600; i++) {
    const name = `${String(Math.floor(i / 12))}-${String((i % 12) + 1).padStart(2, '0')}`;
    out.push(name);
    if (name >= to) break;
  }
  return out;
};

const monthsBetween = (from: string, to: string): number => {
  const at = (m: string) => Number(m.slice(0, 4)) * 12 + Number(m.slice(5, 7));
  return at(to) - at(from);
};

/** The record as users would have paid it, running into the fan of futures. */
export function PriceHistory({
  data,
  fuel,
  format,
  units,
}: {
  data: FuelQuery;
  fuel: Fuel;
  format: (v: number) => string;
  units: UnitSystem;
}) {
  const fan = data.priceFan;
  if (!fan) return null;
  const record = new Map(data.deliveredHistory.map((p) => [p.month, p.usdPerUnit ?? undefined]));
  const last = data.deliveredHistory.at(-1)?.month ?? fan.months[0] ?? '';
  const from = record.size > 0 ? `${String(Number(last.slice(0, 4)) - YEARS)}-01` : last;
  const future = new Map(fan.months.map((name, i) => [name, i]));
  const points: Point[] = months(from, fan.months.at(-1) ?? last).map((name) => {
    const i = future.get(name);
    return i === undefined
      ? { name, recorded: record.get(name) }
      : {
          name,
          recorded: record.get(name),
          p50: fan.p50[i],
          outer: [fan.p10[i] ?? 0, fan.p90[i] ?? 0],
          inner: [fan.p25[i] ?? 0, fan.p75[i] ?? 0],
        };
  });
  const cell = (usd?: number) => (usd === undefined ? '' : usdPerUnitIn(usd, fan.unit, units).toFixed(3));
  const end = points.at(-1);
  const colour = fuelColour[fuel];
  const most = Math.max(...points.map((p) => Math.max(p.recorded ?? 0, p.outer?.[1] ?? 0)));
  const scale = roundScale(0, most, 4);
  const stale = monthsBetween(last, fan.months[0] ?? last) - 1;
  return (
    <ChartFrame
      title={`${fuelName[fuel].charAt(0).toUpperCase()}${fuelName[fuel].slice(1)}: the record and the prices to come`}
      caption={`Dollars a ${unitIn(fan.unit, units)}, delivered, by month; ${fan.words}. Where a contract is fixed, the houses pay that instead while it runs.`}
      table={{
        heads: ['month', 'recorded, $', 'one in ten under, $', 'middle, $', 'one in ten over, $'],
        rows: points
          .filter((p) => p.recorded !== undefined || p.p50 !== undefined)
          .map((p) => [p.name, cell(p.recorded), cell(p.outer?.[0]), cell(p.p50), cell(p.outer?.[1])]),
      }}
    >
      <div style={{ height: 340 }} className="small">
        <ResponsiveContainer initialDimension={{ width: 600, height: 340 }}>
          <ComposedChart
            data={points}
            margin={{ top: 16, right: 12, bottom: 4, left: 12 }}
            accessibilityLayer
            title="the same numbers stand in the table below"
          >
            <CartesianGrid vertical={false} stroke="var(--rule)" />
            <XAxis dataKey="name" stroke="var(--ink)" tickLine={false} interval="preserveStartEnd" minTickGap={40} />
            <YAxis
              stroke="var(--ink)"
              axisLine={false}
              tickLine={false}
              ticks={scale.ticks}
              domain={[scale.low, scale.high]}
              tickFormatter={format}
              width={76}
            />
            <ReferenceLine y={0} stroke="var(--ink)" />
            {record.size > 0 && (
              <ReferenceLine
                x={last}
                stroke="var(--quiet)"
                strokeDasharray="2 3"
                label={{ value: 'record ends', position: 'insideTopRight', fill: 'var(--quiet)' }}
              />
            )}
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
            <Line dataKey="recorded" stroke="var(--ink)" strokeWidth={1.25} dot={false} isAnimationActive={false} />
            <Tooltip content={({ payload }) => <Sentence point={payload?.[0]?.payload as Point | undefined} format={format} />} />
          </ComposedChart>
        </ResponsiveContainer>
      </div>
      {record.size > 0 && stale >= 12 && (
        <p className="small" style={{ margin: 0 }}>
          <b className="warn">The record is {stale} months old:</b> it ends in {last} and these futures begin in {fan.months[0]}.{' '}
          <Link to="/import">Bring in newer prices</Link> or tell today&apos;s level in{' '}
          <Link to={`/fuel/prices?fuel=${fuel}`}>the settings</Link>.
        </p>
      )}
      {end?.outer && (
        <p className="quiet small" style={{ margin: 0 }}>
          {end.name}: one in ten over {format(end.outer[1])}, middle <b style={{ color: 'var(--ink)' }}>{format(end.p50 ?? 0)}</b>, one in
          ten under {format(end.outer[0])}. The spread grows from {last}
          {record.size > 0 && ', where the record ends'}.
        </p>
      )}
    </ChartFrame>
  );
}

function Sentence({ point, format }: { point?: Point; format: (v: number) => string }) {
  if (!point) return null;
  return (
    <div style={{ background: 'var(--page)', border: '1px solid var(--rule)', padding: '4px 8px' }}>
      {point.name}:{' '}
      {point.recorded !== undefined
        ? `${format(point.recorded)} by the record`
        : point.outer
          ? `middle ${format(point.p50 ?? 0)}, between ${format(point.outer[0])} and ${format(point.outer[1])} in eight of ten futures`
          : 'no record and no future'}
      .
    </div>
  );
}
