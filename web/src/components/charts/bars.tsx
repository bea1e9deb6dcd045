import { useRef } from 'react';
import { Bar, BarChart, CartesianGrid, Cell, LabelList, ResponsiveContainer, XAxis, YAxis } from 'recharts';
import { useWidth } from './use-width.ts';

const NARROW = 480;

/** Share of futures that pay back in each season, and those that never do, hatched. */
export function PaybackBars({ shares, never }: { shares: number[]; never: number }) {
  const frame = useRef<HTMLDivElement>(null);
  const narrow = useWidth(frame) < NARROW;
  const data = [...shares.map((s, i) => ({ name: String(i + 1), value: 100 * s })), { name: 'never', value: 100 * never }];
  return (
    <div ref={frame} style={{ height: 280 }} className="small">
      <ResponsiveContainer initialDimension={{ width: 500, height: 280 }}>
        <BarChart data={data} margin={{ top: 20, right: 4, bottom: 4, left: 0 }} title="the same numbers stand in the table below">
          <defs>
            <pattern id="never" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <line x1="0" y1="0" x2="0" y2="5" stroke="var(--ink)" strokeWidth="1.4" />
            </pattern>
          </defs>
          <CartesianGrid vertical={false} stroke="var(--rule)" />
          <XAxis
            dataKey="name"
            stroke="var(--ink)"
            tickLine={false}
            interval={0}
            fontSize={12}
            tickFormatter={(name: string, i: number) => (narrow && i === shares.length - 1 ? '' : name)}
          />
          <YAxis stroke="var(--ink)" axisLine={false} tickLine={false} tickCount={4} width={34} />
          <Bar dataKey="value" isAnimationActive={false}>
            {data.map((d) => (
              <Cell
                key={d.name}
                fill={d.name === 'never' ? 'url(#never)' : 'var(--quiet)'}
                stroke={d.name === 'never' ? 'var(--ink)' : 'none'}
              />
            ))}
          </Bar>
        </BarChart>
      </ResponsiveContainer>
    </div>
  );
}

/** Pairs: outline = as it stands, solid = with the option. */
export function PairBars({
  data,
  unit,
  paired = true,
}: {
  data: { name: string; standing: number; withOption: number }[];
  unit: string;
  paired?: boolean;
}) {
  return (
    <div style={{ height: 240 }} className="small">
      <ResponsiveContainer initialDimension={{ width: 400, height: 240 }}>
        <BarChart
          data={data}
          margin={{ top: 20, right: 4, bottom: 4, left: 0 }}
          title={`by month, ${unit}; the same numbers stand in the table below`}
        >
          <CartesianGrid vertical={false} stroke="var(--rule)" />
          <XAxis dataKey="name" stroke="var(--ink)" tickLine={false} interval={0} fontSize={13} />
          <YAxis stroke="var(--ink)" axisLine={false} tickLine={false} tickCount={4} width={44} />
          <Bar dataKey="standing" fill="var(--bad)" fillOpacity={0.13} stroke="var(--bad)" isAnimationActive={false}>
            <LabelList dataKey="standing" position="top" fill="var(--ink)" />
          </Bar>
          {paired && (
            <Bar dataKey="withOption" fill="var(--bad)" fillOpacity={0.78} isAnimationActive={false}>
              <LabelList dataKey="withOption" position="top" fill="var(--ink)" />
            </Bar>
          )}
        </BarChart>
      </ResponsiveContainer>
    </div>
  );
}
