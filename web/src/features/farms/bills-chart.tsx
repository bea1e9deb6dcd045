import {
  Bar,
  BarChart,
  CartesianGrid,
  Cell,
  ComposedChart,
  Line,
  ReferenceLine,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import type { BillsFragment } from '../../lib/graphql/generated/graphql.ts';
import { fuelColour, type Fuel, type UnitSystem } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { day, fuelUnit, inUnit } from './bills-words.ts';

/** The last day of an interval, with its year where that begins: two bills may end in one month. */
const endOf = (days: readonly string[], at: number): string => {
  const on = days[at] ?? '';
  const words = day(on);
  return days[at - 1]?.slice(0, 4) === on.slice(0, 4) ? words.replace(/ \d{4}$/, '') : words;
};

/** Billed against modelled by interval, a day, and what is left over. */
export function BillsChart({ bills, fuel, units }: { bills: BillsFragment; fuel: Fuel; units: UnitSystem }) {
  const { heating } = useUnits();
  const unit = fuelUnit(fuel, units);
  const data = bills.intervals.map((i, at) => ({
    key: i.toOn,
    name: endOf(
      bills.intervals.map((x) => x.toOn),
      at,
    ),
    billed: inUnit(i.billedKwh / i.heatedDays, fuel, units, heating),
    described: inUnit(i.describedKwh / i.heatedDays, fuel, units, heating),
    fitted: inUnit(i.fittedKwh / i.heatedDays, fuel, units, heating),
    left: inUnit(i.residualKwh / i.heatedDays, fuel, units, heating),
    outlying: i.outlying,
    said: `${day(i.fromOn)} to ${day(i.toOn)}`,
  }));
  const colour = fuelColour[fuel];
  const n = (v: number) => v.toLocaleString('en-US', { maximumSignificantDigits: 3 }).replace('-', '−');
  const axis = { stroke: 'var(--ink)', tickLine: false, fontSize: 12 } as const;
  return (
    <ChartFrame
      title="Billed against modelled"
      caption={`${unit} a day over each bill's own days, named by its last day: bars billed, solid line as the bills make it, dashed as described; below, what is left over.${
        bills.intervals.every((i) => i.metered)
          ? ''
          : ' A total is met whole by what the houses need on its days; its bar is its mean over the days on which they are heated.'
      }`}
      table={{
        heads: ['from', 'to', 'days', `billed ${unit}`, `as described ${unit}`, `fitted ${unit}`, `left over ${unit}`, 'remark'],
        rows: bills.intervals.map((i) => [
          i.fromOn,
          i.toOn,
          i.days,
          n(inUnit(i.billedKwh, fuel, units, heating)),
          n(inUnit(i.describedKwh, fuel, units, heating)),
          n(inUnit(i.fittedKwh, fuel, units, heating)),
          n(inUnit(i.residualKwh, fuel, units, heating)),
          [i.note, i.metered ? null : `a total, ${String(i.heatedDays)} of its days heated`, i.outlying ? 'stands out' : null]
            .filter(Boolean)
            .join('; '),
        ]),
      }}
    >
      <div style={{ height: 240 }} className="small">
        <ResponsiveContainer initialDimension={{ width: 600, height: 240 }}>
          <ComposedChart data={data} margin={{ top: 12, right: 4, bottom: 4, left: 0 }} title="the same numbers stand in the table below">
            <CartesianGrid vertical={false} stroke="var(--rule)" />
            <XAxis dataKey="name" {...axis} minTickGap={16} />
            <YAxis {...axis} axisLine={false} tickCount={4} width={44} />
            <Tooltip
              isAnimationActive={false}
              content={({ payload }) => {
                const p = payload[0]?.payload as (typeof data)[number] | undefined;
                return p ? (
                  <div style={{ background: 'var(--page)', border: '1px solid var(--rule)', padding: 8, maxWidth: 280 }}>
                    {p.said}: {n(p.billed)} {unit} a day billed, {n(p.fitted)} fitted, {n(p.described)} as described.
                  </div>
                ) : null;
              }}
            />
            <Bar dataKey="billed" fill={colour} fillOpacity={0.25} stroke={colour} isAnimationActive={false} />
            <Line dataKey="fitted" stroke="var(--ink)" strokeWidth={2} dot={{ r: 2 }} isAnimationActive={false} />
            <Line dataKey="described" stroke="var(--quiet)" strokeDasharray="5 3" dot={false} isAnimationActive={false} />
          </ComposedChart>
        </ResponsiveContainer>
      </div>
      <div style={{ height: 110 }} className="small">
        <ResponsiveContainer initialDimension={{ width: 600, height: 110 }}>
          <BarChart
            data={data}
            margin={{ top: 8, right: 4, bottom: 4, left: 0 }}
            title="left over by interval; the same numbers stand in the table below"
          >
            <XAxis dataKey="name" hide />
            <YAxis {...axis} axisLine={false} tickCount={3} width={44} />
            <ReferenceLine y={0} stroke="var(--ink)" />
            <Bar dataKey="left" isAnimationActive={false}>
              {data.map((d) => (
                <Cell key={d.key} fill={d.outlying ? 'var(--warn)' : 'var(--quiet)'} />
              ))}
            </Bar>
          </BarChart>
        </ResponsiveContainer>
      </div>
    </ChartFrame>
  );
}
