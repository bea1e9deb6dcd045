import type { NewHouseMutation } from '../../lib/graphql/generated/graphql.ts';
import { useUnits } from '../../lib/units/units-context.tsx';

type Preview = NonNullable<NewHouseMutation['newHouse']['preview']>;

/** The first answer, before any saving: what the house as described would burn, beside what was told. */
export function NewHousePreview({ preview }: { preview: Preview }) {
  const { say, amount } = useUnits();
  const told = preview.toldKwhFuel;
  const miss = told ? preview.fuelKwh / told - 1 : 0;
  return (
    <section aria-live="polite">
      <h2>
        We reckon <b>{amount(preview.fuelKwh, preview.fuel)}</b> for a middling winter ({preview.seasonName})
        {told ? (
          <>
            ; you told <b>{amount(told, preview.fuel)}</b> for the last one.
          </>
        ) : (
          '.'
        )}
      </h2>
      {told && Math.abs(miss) > 0.25 && (
        <p className="fault">
          The two are {Math.round(Math.abs(miss) * 100)} % apart. Look, in this order, at what else burns from that tank or meter, the days
          heated, the set points, torn film, and the unit of the fuel figure.
        </p>
      )}
      {preview.fromDefaults.length > 0 && (
        <>
          <p className="caption">Taken for granted until you say otherwise:</p>
          <ul>
            {preview.fromDefaults.map((d) => (
              <li key={d.field + d.title}>
                {say(d.title)} <span className="caption">({d.source})</span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
