import { useMutation, useQueryClient } from '@tanstack/react-query';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { AssumptionsQuery } from '../../lib/graphql/generated/graphql.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { UseEmissions, UseHeatingValues } from './assumption-queries.ts';
import { emissionUnit, heatColumns } from './fuel-set-units.ts';

type Heating = AssumptionsQuery['heatingValueSets'];
type Emissions = AssumptionsQuery['emissionSets'];
const n = (v: number, digits = 0) => v.toLocaleString('en-US', { minimumFractionDigits: digits, maximumFractionDigits: digits });

interface Props {
  heating: Heating;
  emissions: Emissions;
  setId: string;
  revision: number;
  /** The newest study, which keeps the sets that it froze. */
  studied?: { emissionFactors: string; heatingValues: string } | null | undefined;
}

/** Dated sets of heating values and emission factors; one of each is chosen, and which is reckoned with is said. */
export function FuelSets({ heating, emissions, setId, revision, studied }: Props) {
  const queries = useQueryClient();
  const { units } = useUnits();
  const input = (name: string) => ({ input: { setId, expectedRevision: revision, requestId: requestId(), name } });
  const heat = useMutation({
    mutationFn: async (name: string) => (await ask(UseHeatingValues, input(name))).useHeatingValueSet,
    onSuccess: () => queries.invalidateQueries(),
  });
  const co2 = useMutation({
    mutationFn: async (name: string) => (await ask(UseEmissions, input(name))).useEmissionSet,
    onSuccess: () => queries.invalidateQueries(),
  });
  const columns = heatColumns(units);
  const emission = emissionUnit(units);
  return (
    <section>
      <h2>Heating values and emission factors</h2>
      <p className="caption">
        Higher heating value throughout. Published values move by year: a figure names its set. Prices, tickets, bills and contracts are
        turned into heat by the chosen one; volume gas is counted by the therm factor of its own bill where it tells one.
      </p>
      <div className="scroll" role="region" aria-label="heating values, scrolls sideways" tabIndex={0}>
        <table>
          <caption className="hidden">heating values by set</caption>
          <thead>
            <tr>
              <th scope="col">heating values</th>
              {columns.map((c) => (
                <th scope="col" className="n" key={c.head}>
                  {c.head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {heating.map((s) => (
              <tr key={s.name}>
                <td>
                  {s.name}
                  <Choice name={s.name} of="heating values" inUse={s.inUse} busy={heat.isPending} choose={heat.mutate} />
                </td>
                {[s.gasBtuPerCubicFoot, s.propaneBtuPerGallon, s.oilBtuPerGallon, s.pelletsBtuPerTon].map((v, i) => (
                  <td className="n" key={columns[i]?.head}>
                    {n(v * (columns[i]?.times ?? 1), columns[i]?.decimals)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {studied && (
        <p className="small quiet">
          The newest study turns prices, tickets and contracts into heat by {studied.heatingValues}; studies keep the values they were run
          with.
        </p>
      )}
      <Answer answer={heat.data} error={heat.error} />
      <Sources sets={heating} />
      <div className="scroll" role="region" aria-label="emission factors, scrolls sideways" tabIndex={0}>
        <table>
          <caption className="hidden">emission factors by set</caption>
          <thead>
            <tr>
              <th scope="col">{emission.head}</th>
              {['gas', 'propane', 'No. 2 oil', 'wood'].map((fuel) => (
                <th scope="col" className="n" key={fuel}>
                  {fuel}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {emissions.map((s) => (
              <tr key={s.name}>
                <td>
                  {s.name}, {s.year}
                  <Choice name={s.name} of="emission factors" inUse={s.inUse} busy={co2.isPending} choose={co2.mutate} />
                </td>
                <td className="n">{n(s.gasKgPerMmbtu * emission.times, 2)}</td>
                <td className="n">{n(s.propaneKgPerMmbtu * emission.times, 2)}</td>
                <td className="n">{n(s.oilKgPerMmbtu * emission.times, 2)}</td>
                <td className="n">{s.woodKgPerMmbtu == null ? 'none' : n(s.woodKgPerMmbtu * emission.times, 2)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {studied && (
        <p className="small quiet">
          The newest study reckons CO₂ by {studied.emissionFactors}; studies keep the factors they were run with.
        </p>
      )}
      <Answer answer={co2.data} error={co2.error} />
      <Sources sets={emissions} />
    </section>
  );
}

interface ChoiceProps {
  name: string;
  of: string;
  inUse: boolean;
  busy: boolean;
  choose: (name: string) => void;
}

const Choice = ({ name, of, inUse, busy, choose }: ChoiceProps) => (
  <span className="second">
    {inUse ? (
      'in use'
    ) : (
      <button
        className="link"
        disabled={busy}
        onClick={() => {
          choose(name);
        }}
      >
        reckon by these
        <span className="hidden">
          : {of} of {name}
        </span>
      </button>
    )}
  </span>
);

const Answer = ({
  answer,
  error,
}: {
  answer: { conflict?: unknown; faults: readonly { message: string }[] } | undefined;
  error: Error | null;
}) => (
  <>
    {Boolean(answer?.conflict) && <p className="fault">Somebody changed the assumptions meanwhile; choose again.</p>}
    {(error ?? answer?.faults[0]) && <p className="fault">{error?.message ?? answer?.faults[0]?.message}</p>}
  </>
);

const Sources = ({ sets }: { sets: readonly { name: string; source: string }[] }) => (
  <p className="caption">{sets.map((s) => `${s.name}: ${s.source}`).join('. ')}.</p>
);
