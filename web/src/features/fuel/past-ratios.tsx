import { useQuery } from '@tanstack/react-query';
import { CartesianGrid, Line, LineChart, ReferenceLine, ResponsiveContainer, XAxis, YAxis } from 'recharts';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { counted, dollars, fuelName, heatUnit, priceOf, usdPerUnitIn } from '../../lib/units/format.ts';
import { FuelHistory } from './fuel-queries.ts';
import { useUnits } from '../../lib/units/units-context.tsx';

/** The trade's "four times, twice" against the records year by year, and what spreading over fuels gives the co-op. */
export function PastRatios() {
  const { units } = useUnits();
  const { data } = useQuery({ queryKey: ['fuel-history'], queryFn: () => ask(FuelHistory, {}) });
  if (!data) return null;
  const years = data.heatCostHistory.filter((y) => y.months === 12);
  const early = years.filter((y) => y.year >= 2009 && y.year <= 2013);
  const range = (of: (y: (typeof years)[number]) => number) =>
    early.length > 0 ? `${Math.min(...early.map(of)).toFixed(1)} to ${Math.max(...early.map(of)).toFixed(1)}` : '';
  const joint = data.jointExposure;
  return (
    <>
      {joint && joint.fuels.length > 1 && (
        <section>
          <h2>The whole co-op</h2>
          <p>
            One season in twenty costs the members together over <b>{dollars(joint.p95Usd)}</b>, {dollars(joint.overMeanUsd)} more than the
            mean. Fuel by fuel the dear seasons would add {dollars(joint.partsOverMeanUsd)}: that they do not all come at once takes{' '}
            {dollars(Math.max(0, joint.spreadingGivesUsd))} off.
          </p>
          <p className="quiet">
            {joint.fuels
              .map(
                (f) =>
                  `${fuelName[f.fuel]}: ${counted(f.houses, 'house')}, mean ${dollars(f.meanUsd)}, one in twenty over ${dollars(f.p95Usd)}`,
              )
              .join('; ')}
            . From the newest study, its first season.
          </p>
        </section>
      )}
      {years.length > 0 && (
        <section>
          <ChartFrame
            title="The same heat on propane and oil against natural gas"
            caption={`Times the cost of natural gas, by year, from the records that ship: commercial gas, Mont Belvieu propane with a dealer's margin of ${priceOf(1.6, 'gal', units)}, retail oil; usual heaters. The trade says four times for propane and twice for oil; these records say ${range((y) => y.propaneOverGas)} and ${range((y) => y.oilOverGas)} in 2009 to 2013. A look back: no price here is derived from another.`}
            table={{
              heads: ['year', `gas, $ a ${heatUnit(units)} of heat`, 'propane, times', 'oil, times'],
              rows: years.map((y) => [
                y.year,
                usdPerUnitIn(y.gasUsdPerMmbtu, 'MMBtu', units).toFixed(2),
                y.propaneOverGas.toFixed(2),
                y.oilOverGas.toFixed(2),
              ]),
            }}
          >
            <div style={{ height: 260 }} className="small">
              <ResponsiveContainer initialDimension={{ width: 600, height: 260 }}>
                <LineChart
                  data={years}
                  margin={{ top: 16, right: 12, bottom: 4, left: 12 }}
                  title="the same numbers stand in the table below"
                >
                  <CartesianGrid vertical={false} stroke="var(--rule)" />
                  <XAxis dataKey="year" stroke="var(--ink)" tickLine={false} minTickGap={40} />
                  <YAxis
                    stroke="var(--ink)"
                    axisLine={false}
                    tickLine={false}
                    domain={[0, 5]}
                    tickCount={6}
                    tickFormatter={(v: number) => `${String(v)} x`}
                  />
                  <ReferenceLine
                    y={1}
                    stroke="var(--fuel-gas)"
                    label={{ value: 'natural gas', position: 'insideBottomRight', fill: 'var(--fuel-gas)' }}
                  />
                  <ReferenceLine y={4} stroke="var(--quiet)" strokeDasharray="2 3" />
                  <ReferenceLine y={2} stroke="var(--quiet)" strokeDasharray="2 3" />
                  <Line dataKey="propaneOverGas" stroke="var(--fuel-propane)" strokeWidth={2} dot={false} isAnimationActive={false} />
                  <Line dataKey="oilOverGas" stroke="var(--fuel-oil)" strokeWidth={2} dot={false} isAnimationActive={false} />
                </LineChart>
              </ResponsiveContainer>
            </div>
            <p className="quiet small" style={{ margin: 0 }}>
              Upper line propane, lower line oil; dotted at four and at two.
            </p>
          </ChartFrame>
        </section>
      )}
    </>
  );
}
