import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { FanChart } from '../../components/charts/fan-chart.tsx';
import { ofHundred } from '../../lib/units/format.ts';
import type { CoverFigures } from './lending-queries.ts';
import { cover as words, coverTick } from './lending-words.ts';

/** A cover by season as a band with the 1.0 line; seasons in which nothing is due are left out. */
export function CoverBand({ title, caption, cover }: { title: string; caption: string; cover: CoverFigures }) {
  const due = cover.bySeason.flatMap((s) => (s.cover ? [{ season: s.season, under: s.underOneShare, ...s.cover }] : []));
  const runs = cover.longestRunShare.map((share, run) => ({ share, run })).filter((r) => r.run > 0 && r.share > 0);
  const long = runs.filter((r) => r.run >= 2).reduce((sum, r) => sum + r.share, 0);
  return (
    <section>
      <ChartFrame
        title={title}
        caption={caption}
        table={{
          heads: ['season', 'one in ten under', 'one in four under', 'middle', 'one in four over', 'one in ten over', 'under 1.0, of 100'],
          rows: due.map((s) => [s.season, words(s.p10), words(s.p25), words(s.p50), words(s.p75), words(s.p90), ofHundred(s.under)]),
        }}
      >
        <FanChart
          points={due.map((s) => ({ name: s.season, p10: s.p10, p25: s.p25, p50: s.p50, p75: s.p75, p90: s.p90 }))}
          format={coverTick}
          line={{ at: 1, name: 'cover 1.0' }}
          height={280}
        />
      </ChartFrame>
      <p>
        Under 1.0 in some season in <b>{ofHundred(cover.underOneShare)} of 100</b> futures, give or take{' '}
        {(100 * cover.underOneHalfWidth).toFixed(1)}; under what is asked in {ofHundred(cover.underRequiredShare)}; two seasons or more in a
        row in {ofHundred(long)}. Worst season of the term: middle <b>{words(cover.worst.p50)}</b>, one in ten under{' '}
        {words(cover.worst.p10)}.
      </p>
    </section>
  );
}
