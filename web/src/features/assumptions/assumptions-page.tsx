import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import { Assumptions } from './assumption-queries.ts';
import { CatalogueTable } from './catalogue-table.tsx';
import { FuelSets } from './fuel-sets.tsx';
import { StudyAssumptions } from './study-assumptions.tsx';

export function AssumptionsPage() {
  const { data, error } = useQuery({ queryKey: ['assumptions'], queryFn: () => ask(Assumptions) });
  if (error) return <p className="fault">{error.message}</p>;
  const s = data?.coop.scenarioSet;
  if (!s) return <p className="quiet">{data ? 'There are no assumptions yet.' : 'Reading the assumptions.'}</p>;
  const inUse = data.coop.assumptionSets.find((set) => set.key === 'now')?.values;
  const value = (field: string) => inUse?.find((v) => v.field === field)?.value;
  return (
    <>
      <h1>
        Seasons from <b>{s.firstSeason}</b>, <b>{s.seasonCount}</b> of them; money is discounted at{' '}
        <b>{Math.round(1000 * s.discountRate) / 10} %</b>, everything nominal.
      </h1>
      <p className="lead">
        A price level is {s.levelMeaning === 'MIDDLE' ? 'the middle of the futures' : 'the mean of the futures'}. Futures are{' '}
        {value('evenFutures') === 1 ? 'spread evenly, by Sobol points' : 'drawn one by one'}; the ± beside a figure is read from{' '}
        {value('replicateCount')} replicates of {value('pathCount')} each, and is error of computing only.{' '}
        {s.priceCase && (
          <>
            A price case is laid over them: <b>{s.priceCase.title.toLowerCase()}</b>, from {s.priceCase.seasonName}.{' '}
          </>
        )}
        <Link to="/fuel/prices">How prices are assumed to move</Link>: cases, volatility, returns, correlations.
      </p>
      <StudyAssumptions setId={s.id} revision={s.revision} sets={data.coop.assumptionSets} />
      <FuelSets
        heating={data.heatingValueSets}
        emissions={data.emissionSets}
        setId={s.id}
        revision={s.revision}
        studied={data.coop.newestStudy}
      />
      <CatalogueTable figures={data.coop.catalogueFigures} />
    </>
  );
}
