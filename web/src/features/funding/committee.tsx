import { useState } from 'react';
import type { Row } from './funding-query.ts';
import type { Rules } from './funding-rules.ts';

const reasons = {
  pin: ['heater failed, must be replaced now', 'quote expires before the next round', 'work of two houses saves a second visit'],
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

/** Pin or leave out, only with a reason; what is pinned shows its own. */
export function Committee({ row, rules, ask }: Props) {
  const it = itOf(row);
  const known = rules.pinned.find((p) => p.houseId === it.houseId && p.optionKey === it.optionKey);
  if (row.pinned && known) {
    return (
      <>
        pinned: {known.reason}{' '}
        <button className="link" onClick={() => rules.remove('pin', it)}>
          unpin
        </button>
      </>
    );
  }
  return (
    <>
      <button className="link" onClick={() => ask('pin')}>
        pin<span className="hidden"> {row.option.house.name}</span>
      </button>{' '}
      <button className="link" onClick={() => ask('out')}>
        leave out<span className="hidden"> {row.option.house.name}</span>
      </button>
    </>
  );
}

/** The reason, which goes into the address and the order; none is taken for granted. */
export function ReasonForm({ row, rules, ask, asking }: Props & { asking: Asking }) {
  const [reason, setReason] = useState('');
  const [words, setWords] = useState('');
  return (
    <form
      onSubmit={(e) => {
        e.preventDefault();
        rules.add(asking, { ...itOf(row), reason: [reason === OTHER ? '' : reason, words.trim()].filter((x) => x !== '').join('; ') });
        ask(undefined);
      }}
    >
      <div className="form">
        <label>
          <span>
            reason to {asking === 'pin' ? 'pin' : 'leave out'} {row.option.house.farm.name}, {row.option.house.name}
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
      <button className="link">{asking === 'pin' ? 'pin it' : 'leave it out'}</button>{' '}
      <button className="link" type="button" onClick={() => ask(undefined)}>
        never mind
      </button>
    </form>
  );
}
