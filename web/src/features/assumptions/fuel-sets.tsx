import { useMutation, useQueryClient } from '@tanstack/react-query';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { AssumptionsQuery } from '../../lib/graphql/generated/graphql.ts';
import { UseEmissions } from './assumption-queries.ts';

type Heating = AssumptionsQuery['heatingValueSets'];
type Emissions = AssumptionsQuery['emissionSets'];
const n = (v: number, digits = 0) => v.toLocaleString('en-US', { minimumFractionDigits: digits, maximumFractionDigits: digits });

/** Dated sets of heating values and emission factors; which are reckoned with is said. */
interface Props {
  heating: Heating;
  emissions: Emissions;
  setId: string;
  revision: number;
  /** The emission factors that the newest study froze. */
  studied?: string | undefined;
}

export function FuelSets({ heating, emissions, setId, revision, studied }: Props) {
  const queries = useQueryClient();
  const use = useMutation({
    mutationFn: (name: string) => ask(UseEmissions, { input: { setId, expectedRevision: revision, requestId: requestId(), name } }),
    onSuccess: () => queries.invalidateQueries(),
  });
  const answer = use.data?.useEmissionSet;
  return (
    <section>
      <h2>Heating values and emission factors</h2>
      <p className="caption">
        Higher heating value throughout. Published values move by year: a figure names its set. Volume gas is counted by the therm factor of
        its own bill where it tells one.
      </p>
      <div className="scroll" role="region" aria-label="heating values, scrolls sideways" tabIndex={0}>
        <table>
          <caption className="hidden">heating values by set</caption>
          <thead>
            <tr>
              <th scope="col">heating values</th>
              <th scope="col" className="n">
                gas, Btu/ft³
              </th>
              <th scope="col" className="n">
                propane, Btu/gal
              </th>
              <th scope="col" className="n">
                No. 2 oil, Btu/gal
              </th>
              <th scope="col" className="n">
                pellets, Btu/short ton
              </th>
            </tr>
          </thead>
          <tbody>
            {heating.map((s) => (
              <tr key={s.name}>
                <td>
                  {s.name}
                  {s.inUse && <span className="second">in use</span>}
                </td>
                <td className="n">{n(s.gasBtuPerCubicFoot)}</td>
                <td className="n">{n(s.propaneBtuPerGallon)}</td>
                <td className="n">{n(s.oilBtuPerGallon)}</td>
                <td className="n">{n(s.pelletsBtuPerTon)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Sources sets={heating} />
      <div className="scroll" role="region" aria-label="emission factors, scrolls sideways" tabIndex={0}>
        <table>
          <caption className="hidden">emission factors by set</caption>
          <thead>
            <tr>
              <th scope="col">kg CO₂ a MMBtu</th>
              <th scope="col" className="n">
                gas
              </th>
              <th scope="col" className="n">
                propane
              </th>
              <th scope="col" className="n">
                No. 2 oil
              </th>
              <th scope="col" className="n">
                wood
              </th>
            </tr>
          </thead>
          <tbody>
            {emissions.map((s) => (
              <tr key={s.name}>
                <td>
                  {s.name}, {s.year}
                  {s.inUse ? (
                    <span className="second">in use</span>
                  ) : (
                    <span className="second">
                      <button className="link" disabled={use.isPending} onClick={() => use.mutate(s.name)}>
                        reckon by these<span className="hidden">: {s.name}</span>
                      </button>
                    </span>
                  )}
                </td>
                <td className="n">{n(s.gasKgPerMmbtu, 2)}</td>
                <td className="n">{n(s.propaneKgPerMmbtu, 2)}</td>
                <td className="n">{n(s.oilKgPerMmbtu, 2)}</td>
                <td className="n">{s.woodKgPerMmbtu == null ? 'none' : n(s.woodKgPerMmbtu, 2)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {studied && <p className="small quiet">The newest study reckons CO₂ by {studied}; studies keep the factors they were run with.</p>}
      {answer?.conflict && <p className="fault">Somebody changed the assumptions meanwhile; choose again.</p>}
      {(use.error ?? answer?.faults[0]) && <p className="fault">{use.error?.message ?? answer?.faults[0]?.message}</p>}
      <Sources sets={emissions} />
    </section>
  );
}

const Sources = ({ sets }: { sets: readonly { name: string; source: string }[] }) => (
  <p className="caption">{sets.map((s) => `${s.name}: ${s.source}`).join('. ')}.</p>
);
