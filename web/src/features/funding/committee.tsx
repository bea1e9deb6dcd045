import { useState } from 'react';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import type { Row } from './funding-query.ts';
import type { Rules } from './funding-rules.ts';

const reasons = {
  pin: ['heater failed, must be replaced now', 'quote expires before the next round', 'work of two houses saves a second visit'],
  amount: ['quote was corrected', 'hardship', 'other money pays a part'],
  out: ['grower asked to wait', 'house is to be sold or pulled down', 'crop plan of the farm has changed', 'other money pays for it'],
};
const OTHER = 'other';

export type Asking = keyof typeof reasons;

interface Props {
  row: Row;
  rules: Rules;
  ask: (what?: Asking) => void;
}

const itOf = (row: Row) => ({ houseId: row.option.house.id, optionKey: row.option.key });

/** That a row is pinned, why, and the way back. */
export function Pinned({ row, rules }: { row: Row; rules: Rules }) {
  const it = itOf(row);
  const known = rules.pinned.find((p) => p.houseId === it.houseId && p.optionKey === it.optionKey);
  if (!known) return null;
  return (
    <>
      {' '}
      pinned: {known.reason}{' '}
      <button className="link" onClick={() => rules.remove('pin', it)}>
        unpin<span className="hidden"> {row.option.house.name}</span>
      </button>
    </>
  );
}

/** What the committee can do against the figures, only with a reason. */
export function Committee({ row, ask }: Omit<Props, 'rules'>) {
  return (
    <p className="small">
      The committee may{' '}
      <button className="link" onClick={() => ask('pin')}>
        pin<span className="hidden"> {row.option.house.name}</span>
      </button>{' '}
      it,{' '}
      <button className="link" onClick={() => ask('out')}>
        leave it out<span className="hidden">: {row.option.house.name}</span>
      </button>{' '}
      or{' '}
      <button className="link" onClick={() => ask('amount')}>
        set the amount<span className="hidden"> of {row.option.house.name}</span>
      </button>
      , each with a reason that the address and the round keep.
    </p>
  );
}

/** The reason, which goes into the address and the order; none is taken for granted. */
export function ReasonForm({ row, rules, ask, asking }: Props & { asking: Asking }) {
  const [reason, setReason] = useState('');
  const [words, setWords] = useState('');
  const [usd, setUsd] = useState(String(row.grantUsd));
  useUnsaved(reason !== '' || words !== '' || usd !== String(row.grantUsd));
  const doing = asking === 'pin' ? 'pin' : asking === 'out' ? 'leave out' : 'set the amount of';
  return (
    <form
      onSubmit={(e) => {
        e.preventDefault();
        const choice = { ...itOf(row), reason: [reason === OTHER ? '' : reason, words.trim()].filter((x) => x !== '').join('; ') };
        if (asking === 'amount') rules.addAmount({ ...choice, grantUsd: Number(usd) });
        else rules.add(asking, choice);
        ask(undefined);
      }}
    >
      <div className="form">
        {asking === 'amount' && (
          <label>
            <span>grant, dollars, at most its eligible cost</span>
            <input type="number" min={0} value={usd} onChange={(e) => setUsd(e.target.value)} required />
          </label>
        )}
        <label>
          <span>
            reason to {doing} {row.option.house.farm.name}, {row.option.house.name}
          </span>
          <select value={reason} onChange={(e) => setReason(e.target.value)} required>
            <option value="">choose a reason</option>
            {reasons[asking].map((r) => (
              <option key={r}>{r}</option>
            ))}
            <option value={OTHER}>other, in own words</option>
          </select>
        </label>
        <label>
          <span>in own words{reason === OTHER ? '' : ', if need be'}</span>
          <input value={words} onChange={(e) => setWords(e.target.value)} required={reason === OTHER} pattern=".*\S.*" />
        </label>
      </div>
      <button className="link">{asking === 'pin' ? 'pin it' : asking === 'out' ? 'leave it out' : 'set it'}</button>{' '}
      <button className="link" type="button" onClick={() => ask(undefined)}>
        never mind
      </button>
    </form>
  );
}
