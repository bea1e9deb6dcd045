import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

const Assumptions = graphql(`
  query Assumptions {
    coop {
      scenarioSet {
        id
        revision
        name
        firstSeason
        seasonCount
        seed
        discountRate
        upkeepGrowth
        wageUsdPerHour
        electricityUsdPerKwh
        offsetTrendKPerYear
        lossLevel
        levelMeaning
        assumptions {
          group
          title
          value
          unit
          low
          high
          status
          source
        }
      }
    }
  }
`);
const SaveSet = graphql(`
  mutation SaveSet($input: SaveScenarioSetInput!) {
    saveScenarioSet(input: $input) {
      changeId
      conflict
      faults {
        field
        message
        remedy
      }
    }
  }
`);

const fields = {
  discountRate: 'discount rate, 0.05 = 5 % a year',
  upkeepGrowth: 'growth of wages and upkeep a year',
  wageUsdPerHour: 'wage, $ an hour',
  electricityUsdPerKwh: 'electricity for pumps and motors, $ a kWh',
  offsetTrendKPerYear: 'warming, K a year',
  lossLevel: 'multiplier on U-values before bills',
  seed: 'random seed',
} as const;

const known = {
  Read: 'read',
  Computed: 'computed',
  FromMemory: 'from memory',
  CommonPractice: 'common practice',
  Entered: 'entered',
} as Record<string, string>;

export function AssumptionsPage() {
  const queries = useQueryClient();
  const { data, error } = useQuery({ queryKey: ['assumptions'], queryFn: () => ask(Assumptions) });
  const [typed, set] = useState<Record<string, string>>({});
  const save = useMutation({
    mutationFn: (input: Record<string, unknown>) => ask(SaveSet, { input } as never),
    onSuccess: async () => {
      await queries.invalidateQueries();
    },
  });
  if (error) return <p className="fault">{error.message}</p>;
  const s = data?.coop.scenarioSet;
  if (!s) return <p className="quiet">{data ? 'There are no assumptions yet.' : 'Reading the assumptions.'}</p>;
  const value = (k: keyof typeof fields) => typed[k] ?? String(s[k]);
  const submit = () => {
    const numbers = Object.fromEntries(
      Object.keys(fields)
        .filter((k) => k !== 'seed')
        .map((k) => [k, Number(value(k as keyof typeof fields))]),
    );
    save.mutate({
      ...numbers,
      seed: value('seed'),
      levelMeaning: typed['levelMeaning'] ?? s.levelMeaning,
      id: s.id,
      expectedRevision: s.revision,
      requestId: requestId(),
    });
  };
  const faults = save.data?.saveScenarioSet.faults ?? [];
  return (
    <>
      <h1>
        Seasons from <b>{s.firstSeason}</b>, <b>{s.seasonCount}</b> of them; money is discounted at{' '}
        <b>{Math.round(1000 * s.discountRate) / 10} %</b>, everything nominal.
      </h1>
      <section>
        <h2>{s.name}</h2>
        <p className="caption">A change marks the newest study out of date; the study keeps its own.</p>
        <div className="form">
          {(Object.keys(fields) as (keyof typeof fields)[]).map((k) => (
            <label key={k}>
              <span>{fields[k]}</span>
              <input value={value(k)} onChange={(e) => set({ ...typed, [k]: e.target.value })} />
              {faults
                .filter((f) => f.field === k)
                .map((f) => (
                  <span key={f.message} className="fault">
                    {f.message} {f.remedy}
                  </span>
                ))}
            </label>
          ))}
          <label>
            <span>a price level is</span>
            <select value={typed['levelMeaning'] ?? s.levelMeaning} onChange={(e) => set({ ...typed, levelMeaning: e.target.value })}>
              <option value="MIDDLE">the middle of the futures</option>
              <option value="EXPECTED">their mean</option>
            </select>
          </label>
        </div>
        {save.error && <p className="fault">{save.error.message}</p>}
        {save.data?.saveScenarioSet.conflict && (
          <p className="fault">Somebody changed the assumptions meanwhile. What you typed is kept; save again to lay it over theirs.</p>
        )}
        <button className="filled" disabled={save.isPending} onClick={submit}>
          Save the assumptions
        </button>
      </section>
      <section>
        <h2>Every default, and where it comes from</h2>
        <div className="scroll" role="region" aria-label="table, scrolls sideways" tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">of what</th>
                <th scope="col">number</th>
                <th scope="col" className="n">
                  value
                </th>
                <th scope="col" className="n">
                  one in ten under to over
                </th>
                <th scope="col">unit</th>
                <th scope="col">how it is known</th>
              </tr>
            </thead>
            <tbody>
              {s.assumptions.map((a) => (
                <tr key={a.group + a.title}>
                  <td>{a.group}</td>
                  <td>{a.title}</td>
                  <td className="n">{round(a.value)}</td>
                  <td className="n">{a.low != null && a.high != null ? `${round(a.low)} to ${round(a.high)}` : ''}</td>
                  <td>{a.unit === '1' ? '' : a.unit}</td>
                  <td className="small">
                    {known[a.status] ?? a.status}
                    {a.source && a.status !== 'CommonPractice' && a.status !== 'FromMemory' ? `: ${a.source}` : ''}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </section>
    </>
  );
}

const round = (v: number | null | undefined): string => (v == null ? '' : Number(v.toPrecision(3)).toLocaleString('en-US'));
