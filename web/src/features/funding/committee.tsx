import { useState } from 'react';
import type { Row } from './funding-query.ts';
import type { Rules } from './funding-rules.ts';

const reasons = [
  'heater failed, must be replaced now',
  'quote expires before the next round',
  'work of two houses saves a second visit',
  'crop plan of the farm has changed',
  'house is to be sold or pulled down',
  'grower asked to wait',
];

/** Pin or leave out, only with a reason; the reason goes into the address and the order. */
export function Committee({ row, rules }: { row: Row; rules: Rules }) {
  const [asking, ask] = useState<'pin' | 'out'>();
  const [reason, setReason] = useState(reasons[0] ?? '');
  const [words, setWords] = useState('');
  const it = { houseId: row.option.house.id, optionKey: row.option.key };
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
  if (!asking) {
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
  return (
    <form
      onSubmit={(e) => {
        e.preventDefault();
        rules.add(asking, { ...it, reason: [reason, words.trim()].filter((x) => x !== '').join('; ') });
        ask(undefined);
      }}
    >
      <label>
        <span>reason to {asking === 'pin' ? 'pin it' : 'leave it out'}</span>
        <select value={reason} onChange={(e) => setReason(e.target.value)}>
          {reasons.map((r) => (
            <option key={r}>{r}</option>
          ))}
          <option value="">other, told below</option>
        </select>
      </label>
      <label>
        <span>in own words{reason === '' ? '' : ', if need be'}</span>
        <input value={words} onChange={(e) => setWords(e.target.value)} required={reason === ''} />
      </label>
      <button className="link">{asking === 'pin' ? 'pin it' : 'leave it out'}</button>{' '}
      <button className="link" type="button" onClick={() => ask(undefined)}>
        never mind
      </button>
    </form>
  );
}
