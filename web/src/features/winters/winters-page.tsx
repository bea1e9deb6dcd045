import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import type { WintersQuery } from '../../lib/graphql/generated/graphql.ts';
import { FOOT_M, temperature, type UnitSystem } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { NormalsPart } from './normals-part.tsx';
import { SeverityChart } from './severity-chart.tsx';

const Winters = graphql(`
  query Winters {
    coop {
      scenarioSet {
        offsetK
        offsetTrendKPerYear
      }
      weatherStations {
        id
        name
        note
        latitudeDeg
        elevationM
        markedName
        normalsOnly
        normalsWords
        normals {
          monthlyMeanC
          dailySpanK
          spanTold
          degreeDaysK
          departuresFrom
          made {
            season
            name
            degreeDaysK
          }
        }
        trend {
          senKPerDecade
          pValue
          seasons
          spreadSdK
        }
        reference {
          mild
          middle
          hard
        }
        nextWinterCorrelation
        coverage {
          season
          name
          step
          share
          missing
          longestGap
          filledByLine
          filledByUsualDay
          usable
        }
        outlook {
          season
          name
          p10Pct
          p50Pct
          p90Pct
        }
        severity {
          season
          name
          degreeDaysK
          againstMiddlePct
          coldestC
          missingDays
        }
      }
    }
  }
`);

export type Station = WintersQuery['coop']['weatherStations'][number];

export function WintersPage() {
  const { units } = useUnits();
  const { data, error } = useQuery({ queryKey: ['winters'], queryFn: () => ask(Winters) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the winters.</p>;
  const stations = data.coop.weatherStations;
  const first = stations.find((s) => s.severity.length > 0);
  const worst = first?.severity.reduce((a, b) => (b.againstMiddlePct > a.againstMiddlePct ? b : a));
  const set = data.coop.scenarioSet;
  return (
    <>
      {first && worst ? (
        <h1>
          At {first.name} the winter {worst.name} needed <b>{Math.round(worst.againstMiddlePct)} %</b> more heat than the middle one, by
          degree days.
        </h1>
      ) : (
        <h1>
          {stations.some((s) => s.normalsOnly) ? 'Monthly normals stand in for a weather record.' : 'There is no weather record yet.'}
        </h1>
      )}
      <p className="lead">
        Every future draws one recorded winter for all stations at once, for regions freeze together, and moves it by an offset:{' '}
        {offset(set?.offsetK ?? 0, units)} in the first season, {offset(10 * (set?.offsetTrendKPerYear ?? 0), units)} a decade.{' '}
        <Link to="/assumptions">Change the offset</Link> or <Link to="/import">import a station&apos;s record or its monthly normals</Link>.
      </p>
      {stations.map((s) => (
        <StationPart key={s.id} station={s} units={units} />
      ))}
    </>
  );
}

const offset = (k: number, units: UnitSystem) => {
  const v = units === 'us' ? 1.8 * k : k;
  return `${v < 0 ? '−' : '+'}${Math.abs(v).toFixed(1)} ${units === 'us' ? 'F' : 'K'}`;
};

const height = (m: number, units: UnitSystem) =>
  units === 'us' ? `${Math.round(m / FOOT_M).toLocaleString('en-US')} ft` : `${String(Math.round(m))} m`;

const DOUBTFUL = 0.1;

/** Whether the winters got warmer, and whether that is more than chance: Mann and Kendall's rank test, Sen's slope. */
function trendWords(t: NonNullable<Station['trend']>, units: UnitSystem): string {
  const slope = `${offset(Math.abs(t.senKPerDecade), units).slice(1)} a decade ${t.senKPerDecade >= 0 ? 'warmer' : 'colder'} (the middle of the slopes between all pairs)`;
  const chance = String(Math.round(100 * t.pValue));
  return t.pValue < DOUBTFUL
    ? `These ${String(t.seasons)} winters got ${slope}; by chance alone so clear a run comes in ${chance} of 100 records.`
    : `These ${String(t.seasons)} winters show ${slope}, which chance alone often gives (${chance} of 100 records): no trend to lean on.`;
}

function StationPart({ station: s, units }: { station: Station; units: UnitSystem }) {
  const perDay = units === 'us' ? 1.8 : 1;
  const name = (season: number) => s.severity.find((x) => x.season === season)?.name ?? String(season);
  const left = s.coverage.filter((c) => !c.usable);
  const filled = s.coverage.filter((c) => c.usable && c.missing > 0);
  const place = `${s.note ? `${s.note}; ` : ''}${s.latitudeDeg.toFixed(1)} N, ${height(s.elevationM, units)}`;
  if (s.severity.length === 0) {
    return (
      <section>
        <h2>{s.markedName}</h2>
        <p className="caption">{place}</p>
        {s.normals ? <NormalsPart normals={s.normals} words={s.normalsWords} units={units} /> : <p>No season of its record can be used.</p>}
      </section>
    );
  }
  return (
    <section>
      <ChartFrame
        title={s.name}
        caption={`${place}. Degree days below ${temperature(15.56, units)} against the middle winter: open dots recorded, the band what the futures draw, one in ten to nine in ten.`}
        table={{
          heads: [
            'season',
            `degree days, ${units === 'us' ? 'F' : 'K'}`,
            'against the middle, %',
            'coldest hour',
            'recorded, %',
            'longest gap',
            'filled',
          ],
          rows: s.coverage.map((c) => {
            const x = s.severity.find((v) => v.season === c.season);
            return [
              c.name,
              x ? Math.round(x.degreeDaysK * perDay) : 'too gappy',
              x ? Math.round(x.againstMiddlePct) : '',
              x ? temperature(x.coldestC, units) : '',
              (100 * c.share).toFixed(1),
              c.longestGap,
              c.filledByLine + c.filledByUsualDay,
            ];
          }),
        }}
      >
        <SeverityChart recorded={s.severity} outlook={s.outlook} />
      </ChartFrame>
      {s.trend && (
        <p>
          {trendWords(s.trend, units)} Two winters of three lie within {offset(s.trend.spreadSdK, units).slice(1)} of that line.
          {s.nextWinterCorrelation !== null &&
            s.nextWinterCorrelation !== undefined &&
            ` A winter and the next hang together by ${s.nextWinterCorrelation.toFixed(2).replace('-', '−')}: ${Math.abs(s.nextWinterCorrelation) < 2 / Math.sqrt(s.severity.length) ? 'not more than chance gives, so winters are drawn independently' : 'more than chance gives, and the futures leave it out'}.`}
        </p>
      )}
      {s.reference && (
        <p>
          To look at one winter at a time: mild {name(s.reference.mild)}, middling {name(s.reference.middle)}, hard {name(s.reference.hard)}
          .
        </p>
      )}
      <p className="small quiet">
        {filled.length === 0
          ? `All ${String(s.severity.length)} seasons are recorded without a gap.`
          : `Gaps in ${filled.map((c) => `${c.name} (${String(c.missing)} ${c.step === 'HOURLY' ? 'hours' : 'days'}, ${(100 * c.share).toFixed(1)} % recorded)`).join(', ')} are filled by a straight line between the neighbours, longer ones in hourly records by the usual hour plus the neighbours' departures.`}
        {left.length > 0 &&
          ` Left out as too gappy: ${left.map((c) => `${c.name} (longest gap ${String(c.longestGap)} ${c.step === 'HOURLY' ? 'hours' : 'days'})`).join(', ')}.`}
      </p>
    </section>
  );
}
