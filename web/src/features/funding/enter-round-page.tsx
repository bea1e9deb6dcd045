import { useQuery } from '@tanstack/react-query';
import { useNavigate } from 'react-router';
import { Crumbs } from '../../components/crumbs.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { EnteredForm } from './entered-form.tsx';
import { EnteredRound } from './entered-query.ts';

/** Enters a round of before this program with its awards. */
export function EnterRoundPage() {
  const navigate = useNavigate();
  const { data, error } = useQuery({ queryKey: ['entered-round', ''], queryFn: () => ask(EnteredRound, { id: '' }) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the list of works.</p>;
  return (
    <>
      <Crumbs above={[['/rounds', 'Rounds']]} here="an earlier round" />
      <h1>
        A round of before this program, from <b>its papers</b>.
      </h1>
      <p className="lead">
        It is marked “entered by hand, not decided here” wherever it stands, and no decision is chained for it. Its awards count in what was
        promised and delivered, and its grants against the cap of a farm.
      </p>
      <EnteredForm works={data.coop.realisedFactors} done={(id) => void navigate(`/rounds/${id}`)} />
    </>
  );
}
