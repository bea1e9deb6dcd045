import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import { Assumptions } from './assumption-queries.ts';
import { CatalogueTable } from './catalogue-table.tsx';
import { StudyAssumptions } from './study-assumptions.tsx';

export function AssumptionsPage() {
  const { data, error } = useQuery({ queryKey: ['assumptions'], queryFn: () => ask(Assumptions) });
  if (error) return <p className="fault">{error.message}</p>;
  const s = data?.coop.scenarioSet;
  if (!s) return <p className="quiet">{data ? 'There are no assumptions yet.' : 'Reading the assumptions.'}</p>;
  return (
    <>
      <h1>
        Seasons from <b>{s.firstSeason}</b>, <b>{s.seasonCount}</b> of them; money is discounted at{' '}
        <b>{Math.round(1000 * s.discountRate) / 10} %</b>, everything nominal.
      </h1>
      <p className="lead">
        A price level is {s.levelMeaning === 'MIDDLE' ? 'the middle of the futures' : 'the mean of the futures'}.{' '}
        {s.priceCase && (
          <>
            A price case is laid over them: <b>{s.priceCase.title.toLowerCase()}</b>, from {s.priceCase.seasonName}.{' '}
          </>
        )}
        <Link to="/fuel/prices">How prices are assumed to move</Link>: cases, volatility, returns, correlations.
      </p>
      <StudyAssumptions setId={s.id} revision={s.revision} sets={data.coop.assumptionSets} />
      <CatalogueTable figures={data.coop.catalogueFigures} />
    </>
  );
}
