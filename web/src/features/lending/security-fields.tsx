import { Field } from '../../components/forms/field.tsx';
import { dollars } from '../../lib/units/format.ts';
import { worthOf, type TypedSecurity } from './security.ts';

interface Props {
  typed: TypedSecurity;
  change: (typed: TypedSecurity) => void;
  faults: Parameters<typeof Field>[0]['faults'];
}

/** Collateral part by part with its sum, and covenants in free words. */
export function SecurityFields({ typed, change, faults }: Props) {
  const part = (at: number, to: Partial<TypedSecurity['collateral'][number]>) =>
    change({ ...typed, collateral: typed.collateral.map((c, i) => (i === at ? { ...c, ...to } : c)) });
  const covenant = (at: number, to: Partial<TypedSecurity['covenants'][number]>) =>
    change({ ...typed, covenants: typed.covenants.map((c, i) => (i === at ? { ...c, ...to } : c)) });
  return (
    <>
      <fieldset>
        <legend>Collateral{typed.collateral.length > 0 && `: ${dollars(worthOf(typed), 5)} in all`}</legend>
        {typed.collateral.map((c, i) => (
          <div key={i} className="form">
            <Field
              label={`part ${String(i + 1)}, what`}
              value={c.what}
              change={(what) => part(i, { what })}
              name={`collateral.${String(i)}.what`}
              faults={faults}
            />
            <Field
              label={`part ${String(i + 1)}, worth, $`}
              value={c.worth}
              change={(worth) => part(i, { worth })}
              name={`collateral.${String(i)}.worthUsd`}
              faults={faults}
              number={{ least: 0, such: '30000' }}
            />
            <Field
              label={`part ${String(i + 1)}, as of`}
              type="date"
              value={c.asOfOn}
              change={(asOfOn) => part(i, { asOfOn })}
              name=""
              faults={[]}
            />
            <button
              type="button"
              className="link"
              onClick={() => change({ ...typed, collateral: typed.collateral.filter((x) => x !== c) })}
            >
              leave part {i + 1} out
            </button>
          </div>
        ))}
        <p className="small quiet">What is lost at default stays the lender’s own flat figure; the parts stand on the case sheet.</p>
        <button
          type="button"
          className="link"
          onClick={() => change({ ...typed, collateral: [...typed.collateral, { what: '', worth: '', asOfOn: '' }] })}
        >
          add a part
        </button>
      </fieldset>
      <fieldset>
        <legend>Covenants</legend>
        {typed.covenants.map((c, i) => (
          <div key={i} className="form">
            <Field
              label={`covenant ${String(i + 1)}`}
              value={c.words}
              change={(words) => covenant(i, { words })}
              name={`covenants.${String(i)}.words`}
              faults={faults}
            />
            <Field
              label={`covenant ${String(i + 1)}, due on`}
              type="date"
              value={c.dueOn}
              change={(dueOn) => covenant(i, { dueOn })}
              name=""
              faults={[]}
            />
            <button type="button" className="link" onClick={() => change({ ...typed, covenants: typed.covenants.filter((x) => x !== c) })}>
              leave covenant {i + 1} out
            </button>
          </div>
        ))}
        <button
          type="button"
          className="link"
          onClick={() => change({ ...typed, covenants: [...typed.covenants, { words: '', dueOn: '' }] })}
        >
          add a covenant
        </button>
      </fieldset>
    </>
  );
}
