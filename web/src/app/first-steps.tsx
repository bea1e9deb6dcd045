import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { ask } from '../lib/graphql/client.ts';
import { graphql } from '../lib/graphql/generated/index.ts';

const Start = graphql(`
  query FirstSteps {
    coop {
      id
      name
      isDemo
      houseCount
      weatherStations {
        id
        name
        note
      }
      farms(first: 1) {
        total
      }
      newestStudy {
        number
      }
    }
  }
`);

/** What an empty co-op needs, in order, with what is done already. */
export function FirstSteps() {
  const { data } = useQuery({ queryKey: ['first-steps'], queryFn: () => ask(Start) });
  const coop = data?.coop;
  if (!coop || coop.newestStudy) return null;
  const invented = coop.weatherStations.some((s) => s.note?.includes('invented'));
  const steps = [
    {
      done: coop.weatherStations.length > 0,
      what: (
        <>
          <Link to="/import">Bring in the daily record of the nearest weather station</Link>: ten winters or more, so that a hard one is
          among them.
          {invented && ' The stations here are invented ones taken from the example: good to learn with, not to decide by.'}
        </>
      ),
    },
    {
      done: coop.houseCount > 0,
      what: (
        <>
          <Link to="/houses/new">Add a house by nine questions</Link>, or <Link to="/import">bring in a sheet of farms and houses</Link>.
          What one does not know takes a default that is shown.
        </>
      ),
    },
    {
      done: false,
      what: <>Run the first study (above): every house meets the same ten thousand futures of winters and prices.</>,
    },
  ];
  return (
    <section aria-label="first steps">
      <h2>What comes next</h2>
      <ol>
        {steps.map((s, i) => (
          <li key={i} className={s.done ? 'quiet' : undefined}>
            {s.what} {s.done && <b>Done.</b>}
          </li>
        ))}
      </ol>
    </section>
  );
}
