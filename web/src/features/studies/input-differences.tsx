import { counted } from '../../lib/units/format.ts';
import { recorded } from '../../lib/units/recorded.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import type { ComparisonQuery } from '../../lib/graphql/generated/graphql.ts';

/** Fields listed of one input; a record brought in anew may differ in hundreds. */
const FIELDS = 12;

type Inputs = NonNullable<ComparisonQuery['studyComparison']>['inputs'];

/** What differs between the inputs, field by field. */
export function InputDifferences({ inputs, left, right }: { inputs: Inputs; left: number; right: number }) {
  const { units } = useUnits();
  if (inputs.length === 0) return <p>Nothing that they read differs.</p>;
  return (
    <div className="scroll" role="region" aria-label="inputs that differ, scrolls sideways" tabIndex={0}>
      <table>
        <caption className="small quiet">what differs in the inputs</caption>
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">field</th>
            <th scope="col">study {left}</th>
            <th scope="col">study {right}</th>
          </tr>
        </thead>
        <tbody>
          {inputs.flatMap((i) =>
            i.fields.length === 0
              ? [
                  <tr key={i.itemId}>
                    <td>{i.name}</td>
                    <td />
                    <td>{i.state === 'added' ? 'not there' : 'there'}</td>
                    <td>{i.state === 'added' ? 'there' : 'not there'}</td>
                  </tr>,
                ]
              : [
                  ...i.fields.slice(0, FIELDS).map((f) => {
                    const told = recorded(f.title, [f.left, f.right], units);
                    return (
                      <tr key={i.itemId + f.title}>
                        <td>{i.name}</td>
                        <td>{told.title}</td>
                        <td>{told.values[0]}</td>
                        <td>{told.values[1]}</td>
                      </tr>
                    );
                  }),
                  ...(i.fields.length > FIELDS
                    ? [
                        <tr key={i.itemId}>
                          <td>{i.name}</td>
                          <td colSpan={3}>and {counted(i.fields.length - FIELDS, 'more field')}</td>
                        </tr>,
                      ]
                    : []),
                ],
          )}
        </tbody>
      </table>
    </div>
  );
}
