import { PaybackBars } from '../../components/charts/bars.tsx';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { FanChart } from '../../components/charts/fan-chart.tsx';
import { dollars, figure } from '../../lib/units/format.ts';
import type { Result } from './option-query.ts';

/** Savings added up as a fan, against the outlay. */
export function OptionFan({ result: r }: { result: Result }) {
  const points = [
    { name: '0', p10: 0, p25: 0, p50: 0, p75: 0, p90: 0, one: 0 },
    ...r.netUsdBySeason.map((d, i) => ({ name: String(i + 1), ...d, one: r.onePathUsdBySeason[i] ?? 0 })),
  ];
  const season = r.outlayUsd > 0 ? r.lastingPayback.p50Season : undefined;
  return (
    <section>
      <ChartFrame
        title="Savings added up, against the outlay"
        caption="Net of upkeep, watching, power, renewals. Where a line crosses the green one, the money is back; a renewal makes it dip."
        table={{
          heads: ['season', 'one in ten under, $', 'one in four under, $', 'middle, $', 'one in four over, $', 'one in ten over, $'],
          rows: points.map((x) => [x.name, figure(x.p10), figure(x.p25), figure(x.p50), figure(x.p75), figure(x.p90)]),
        }}
      >
        <FanChart
          points={points}
          format={(v) => dollars(v)}
          axis="seasons from the study's first"
          line={r.outlayUsd > 0 ? { at: r.outlayUsd, name: `outlay ${dollars(r.outlayUsd)}` } : undefined}
          met={season ? { name: String(season + r.startSeason), words: `Middle future: paid back in season ${String(season)}` } : undefined}
        />
      </ChartFrame>
    </section>
  );
}

/** When the money is back, with its never bar. */
export function OptionPayback({ result: r }: { result: Result }) {
  const p = r.lastingPayback;
  return (
    <section>
      <ChartFrame
        title="When the money is back"
        caption="Of 100 futures, by season from which it stays paid back. Hatched: never within the seasons reckoned."
        table={{
          heads: ['season', 'of 100 futures'],
          rows: [...p.shareBySeason.map((x, i) => [i + 1, (100 * x).toFixed(1)]), ['never', (100 * p.neverShare).toFixed(1)]],
        }}
      >
        <PaybackBars shares={[...p.shareBySeason]} never={p.neverShare} />
      </ChartFrame>
      <p className="small quiet">
        First time covered, in the middle: {r.firstPayback.p50Season ? `season ${String(r.firstPayback.p50Season)}` : 'never'}; discounted
        and lasting: {r.discounted.p50Season ? `season ${String(r.discounted.p50Season)}` : 'never'}. The shares are known to ±
        {Math.max(1, Math.round(100 * p.halfWidth))} of 100 by the computing alone; the model&apos;s own error is larger.
      </p>
    </section>
  );
}
