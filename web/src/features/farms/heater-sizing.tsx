import { useQuery } from '@tanstack/react-query';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { counted, speed, power, temperature, type UnitSystem } from '../../lib/units/format.ts';

const HeaterSizes = graphql(`
  query HeaterSizes($id: ID!) {
    house(id: $id) {
      design99C
      design996C
      heaterSizes {
        key
        needKw
        needOpenKw
        outputKw
        holdsToC
        nextInputKw
        tooSmall
        coldHours
      }
    }
  }
`);

/** The heater against the cold nights of the record, as the house stands and with an option: warns when it is too small, says how much smaller the next may be. */
export function HeaterSizing({ houseId, optionKey, units }: { houseId: string; optionKey?: string | undefined; units: UnitSystem }) {
  const { data } = useQuery({ queryKey: ['heater', houseId], queryFn: () => ask(HeaterSizes, { id: houseId }) });
  const house = data?.house;
  const standing = house?.heaterSizes.find((h) => h.key === 'none');
  if (!house || !standing || house.design99C === null || house.design99C === undefined) return null;
  const other = optionKey ? house.heaterSizes.find((h) => h.key === optionKey) : undefined;
  const smaller = other ? Math.round(100 * (1 - other.nextInputKw / standing.nextInputKw)) : 0;
  return (
    <section>
      <h2>The heater on the coldest nights</h2>
      <p className="caption">
        99 % of the recorded hours are above {temperature(house.design99C, units)}, 99.6 % above{' '}
        {temperature(house.design996C ?? house.design99C, units)}; wind to {speed(6.7056, units)}.
      </p>
      <p>
        At {temperature(house.design99C, units)} the house as it stands takes <b>{power(standing.needKw, units)}</b>
        {standing.outputKw !== null && standing.outputKw !== undefined && <>; its heater delivers {power(standing.outputKw, units)}</>}
        {other && (
          <>
            . With the option it takes <b>{power(other.needKw, units)}</b>, or {power(other.needOpenKw, units)} with everything open, as in
            snowfall or after a failure
          </>
        )}
        .
      </p>
      {standing.tooSmall && (
        <p className="caution">
          <b>The heater is too small.</b>{' '}
          {standing.holdsToC !== null &&
            standing.holdsToC !== undefined &&
            `It holds the set point down to ${temperature(standing.holdsToC, units)} outside; `}
          in a middling winter {counted(Math.round(standing.coldHours), 'hour falls', 'hours fall')} short.
        </p>
      )}
      {other && smaller > 0 && (
        <p>
          The next heater may be <b>{smaller} % smaller</b>: {power(other.nextInputKw, units)} of input instead of{' '}
          {power(standing.nextInputKw, units)}, a tenth over the need and enough to keep the crop alive with everything open. Size it after
          the insulation, and keep a margin for melting snow; have gas, flue and electrical work done by licensed trades.
        </p>
      )}
    </section>
  );
}
