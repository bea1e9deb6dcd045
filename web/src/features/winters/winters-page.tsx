import { useQuery } from '@tanstack/react-query';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { temperature } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';

const Winters = graphql(`
  query Winters {
    coop {
      weatherStations {
        id
        name
        note
        latitudeDeg
        elevationM
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

export function WintersPage() {
  const { units } = useUnits();
  const { data, error } = useQuery({ queryKey: ['winters'], queryFn: () => ask(Winters) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the winters.</p>;
  const stations = data.coop.weatherStations;
  const worst = stations[0]?.severity.reduce((a, b) => (b.againstMiddlePct > a.againstMiddlePct ? b : a), stations[0].severity[0]!);
  const perDay = units === 'us' ? 1.8 : 1;
  return (
    <>
      {worst ? (
        <h1>
          At {stations[0]?.name} the winter {worst.name} was <b>{Math.round(worst.againstMiddlePct)} %</b> colder than the middle one, by
          degree days.
        </h1>
      ) : (
        <h1>There is no weather record yet. Import one.</h1>
      )}
      {stations.map((s) => (
        <section key={s.id}>
          <ChartFrame
            title={s.name}
            caption={`${s.note ?? ''}; ${s.latitudeDeg.toFixed(1)} N, ${String(s.elevationM)} m. Degree days below 60 F (15.6 C) against the middle winter; each future draws one of these winters for all stations at once.`}
            table={{
              heads: ['season', `degree days, ${units === 'us' ? 'F' : 'K'}`, 'against the middle, %', 'coldest hour', 'days missing'],
              rows: s.severity.map((x) => [
                x.name,
                Math.round(x.degreeDaysK * perDay),
                Math.round(x.againstMiddlePct),
                temperature(x.coldestC, units),
                x.missingDays,
              ]),
            }}
          >
            <Dots rows={s.severity} />
          </ChartFrame>
        </section>
      ))}
    </>
  );
}

function Dots({ rows }: { rows: readonly { season: number; name: string; againstMiddlePct: number }[] }) {
  const most = Math.max(10, ...rows.map((r) => Math.abs(r.againstMiddlePct))) * 1.1;
  const x = (v: number) => 300 + (v / most) * 270;
  const named = [...rows].sort((a, b) => b.againstMiddlePct - a.againstMiddlePct).filter((_, i, all) => i === 0 || i === all.length - 1);
  return (
    <svg viewBox="0 0 600 96" width="100%" style={{ maxWidth: 760 }} role="img" aria-label="severity of every recorded winter">
      <line x1={20} x2={580} y1={66} y2={66} stroke="var(--ink)" />
      <line x1={x(0)} x2={x(0)} y1={16} y2={66} stroke="var(--rule)" />
      <text x={x(0)} y={84} textAnchor="middle">
        middle
      </text>
      <text x={20} y={84}>
        −{Math.round(most)} %, less heat
      </text>
      <text x={580} y={84} textAnchor="end">
        +{Math.round(most)} %, more heat
      </text>
      {rows.map((r) => (
        <circle key={r.season} cx={x(r.againstMiddlePct)} cy={58} r={5} fill="var(--page)" stroke="var(--ink)" />
      ))}
      {named.map((r) => (
        <text key={r.season} className="strong" x={x(r.againstMiddlePct)} y={40} textAnchor="middle">
          {r.name}
        </text>
      ))}
    </svg>
  );
}
