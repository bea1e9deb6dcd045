import { useMutation, useQueryClient } from '@tanstack/react-query';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { InlineNumber } from '../../components/forms/inline-number.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { dollars, figure } from '../../lib/units/format.ts';
import { SaveFigure, type Option } from './option-query.ts';
import { useUnits } from '../../lib/units/units-context.tsx';

type Line = Option['running'][number];

/** What the option costs once and each season; green figures are the grower's own to change. */
export function OptionCosts({ option }: { option: Option }) {
  const { say } = useUnits();
  const queries = useQueryClient();
  const save = useMutation({
    mutationFn: (change: { field: string; value: number | null }) =>
      ask(SaveFigure, {
        input: {
          houseId: option.house.id,
          key: option.key,
          expectedRevision: option.house.optionSetRevision ?? 0,
          requestId: requestId(),
          ...change,
        },
      }),
    onSuccess: () => queries.invalidateQueries(),
  });
  const own = (field: string) => option.ownFigures.includes(field);
  const editable = (field: string, value: number, label: string, per = 1) => (
    <>
      <InlineNumber
        label={label}
        value={round(value * per)}
        expected={{ least: 0, ...(per === 100 ? { most: 100 } : {}) }}
        save={(typed) => save.mutate({ field, value: typed / per })}
      />
      {own(field) && (
        <button className="link small" onClick={() => save.mutate({ field, value: null })} aria-label={`${label}: back to the catalogue's`}>
          own; undo
        </button>
      )}
    </>
  );
  const quantity = (l: Line) => {
    const q = l.quantity ?? 0;
    switch (l.field) {
      case 'watchingHoursPerWeek':
        return <>, {editable(l.field, q, 'watching, hours a week')} h a week</>;
      case 'spaceLostShare':
        return <>, {editable(l.field, q, 'floor lost to the crop, percent', 100)} % of the floor</>;
      case 'lightLostShare':
        return <>, {editable(l.field, q, 'daylight lost, percent', 100)} % of the light</>;
      case 'electricityKwhPerYear':
        return <>, {editable(l.field, q, 'power, kWh a winter')} kWh</>;
      default:
        return l.quantity ? `, ${figure(l.quantity)} ${l.unit ?? ''}` : '';
    }
  };
  const answer = save.data?.saveOptionFigure;
  const r = option.result;
  return (
    <section className="beside">
      <h2>What it costs, and asks</h2>
      <p className="caption controls">Green figures can be changed; the study is then marked out of date.</p>
      <LedgerTable name="what it costs once">
        <thead>
          <tr>
            <th scope="col">once ({option.outlayBasis})</th>
            <th scope="col" className="n">
              $
            </th>
          </tr>
        </thead>
        <tbody>
          {option.outlay.map((l) => (
            <tr key={l.what}>
              <td>{l.what}</td>
              <td className="n">{figure(l.usd)}</td>
            </tr>
          ))}
          <tr className="total">
            <td>Outlay</td>
            <td className="n">{option.isRunningChange ? 0 : editable('outlayUsd', Math.round(option.outlayUsd), 'outlay, dollars')}</td>
          </tr>
        </tbody>
      </LedgerTable>
      <LedgerTable name="what it costs each season">
        <thead>
          <tr>
            <th scope="col">each season</th>
            <th scope="col" className="n">
              $
            </th>
          </tr>
        </thead>
        <tbody>
          {option.running.map((l) => (
            <tr key={l.what}>
              <td>
                {l.what}
                {quantity(l)}
              </td>
              <td className="n">
                {l.field === 'upkeepUsdPerYear' || l.field === 'consumablesUsdPerYear'
                  ? editable(l.field, l.usd, `${l.what}, dollars a season`)
                  : figure(l.usd)}
              </td>
            </tr>
          ))}
          <tr className="total">
            <td>Running</td>
            <td className="n">{figure(option.runningUsd)}</td>
          </tr>
        </tbody>
      </LedgerTable>
      {answer?.faults.map((f) => (
        <p key={f.message} className="fault" role="alert">
          {f.message} {f.remedy}
        </p>
      ))}
      {save.error && <p className="fault">{save.error.message}</p>}
      {answer?.conflict && <p className="fault">Somebody changed these options meanwhile; the page shows theirs now. Type yours again.</p>}
      {!option.isRunningChange && option.lifeYears != null && option.lifeYears > 0 && (
        <p className="small">
          It lasts {editable('lifeYears', option.lifeYears, 'life, years')} years, and is renewed within the seasons reckoned.
        </p>
      )}
      {option.sparedRenewals.length > 0 && (
        <p className="small">
          <b>Spared, and in the saving:</b> the house&apos;s own renewals,{' '}
          {option.sparedRenewals.map((s) => `${dollars(s.usd)} in season ${String(s.season + 1)}`).join(', ')}. That is no fuel: it rests on
          the age of what the house has now.
        </p>
      )}
      {r && r.notCounted.length > 0 && (
        <p className="small">
          <b>Not counted:</b> {r.notCounted.join(', ')}.{!option.isRunningChange && ' Enter crop sales on the house to count them.'}
        </p>
      )}
      {option.drawbacks.length > 0 && (
        <p className="small">
          {say(option.drawbacks.join(' '))}
          {option.skills.length > 0 && ` Skills: ${option.skills.join(', ')}.`}
        </p>
      )}
      {option.cautions.length > 0 && (
        <p className="caution">
          <b>Caution.</b> {say(option.cautions.join(' '))} Follow local codes and licensed trades; do not borrow against a saving you cannot
          do without.
        </p>
      )}
    </section>
  );
}

const round = (v: number): number => Math.round(v * 100) / 100;
