import { useState } from 'react';
import type { Entry } from './bills-entries.tsx';
import { readNumber } from '../../lib/units/typed-number.ts';

/** What can be done with a line: keep it as it stands, take it out for a reason, give its bill's own therm factor. */
export function BillsLineActions({
  e,
  confirm,
  takeOut,
  changeFactor,
}: {
  e: Entry;
  confirm: (no: number) => void;
  takeOut: (no: number, reason: string | null) => void;
  changeFactor?: (no: number, factor: number | null) => void;
}) {
  const [asking, setAsking] = useState<'reason' | 'factor' | null>(null);
  const [typed, set] = useState('');
  const ask = (what: 'reason' | 'factor', now: string) => {
    setAsking(what);
    set(now);
  };
  const done = () => setAsking(null);
  const { value: factor, fault } = readNumber(typed, { least: 0.7, most: 1.3, such: '1.026' });
  const byVolume = ['ccf', 'mcf', 'm3'].includes(e.unit);
  return (
    <>
      {e.faults.length > 0 && !e.confirmed && (
        <button type="button" className="link" onClick={() => confirm(e.no)}>
          it is right as it stands
        </button>
      )}{' '}
      {asking === null && e.takenOut && (
        <button type="button" className="link" onClick={() => takeOut(e.no, null)}>
          put it back
        </button>
      )}
      {asking === null && !e.takenOut && (
        <button type="button" className="link" onClick={() => ask('reason', '')}>
          take it out
        </button>
      )}{' '}
      {asking === null && changeFactor && byVolume && (
        <button type="button" className="link" onClick={() => ask('factor', e.thermsPerCcf == null ? '' : String(e.thermsPerCcf))}>
          therm factor
        </button>
      )}
      {asking === 'reason' && (
        <span>
          <input
            aria-label="why the line is taken out"
            placeholder="why it does not count"
            value={typed}
            onChange={(x) => set(x.target.value)}
          />{' '}
          <button
            type="button"
            className="link"
            disabled={!typed.trim()}
            onClick={() => {
              takeOut(e.no, typed.trim());
              done();
            }}
          >
            take it out
          </button>{' '}
          <button type="button" className="link" onClick={done}>
            leave it in
          </button>
        </span>
      )}
      {asking === 'factor' && changeFactor && (
        <span>
          <input
            aria-label="therm factor of this bill, therms a Ccf"
            placeholder="1.026"
            aria-invalid={fault !== undefined}
            inputMode="decimal"
            value={typed}
            onChange={(x) => set(x.target.value)}
          />{' '}
          <button
            type="button"
            className="link"
            disabled={fault !== undefined}
            onClick={() => {
              changeFactor(e.no, factor);
              done();
            }}
          >
            take this factor
          </button>
          {fault !== undefined && (
            <span className="fault small" role="status">
              {' '}
              {fault}
            </span>
          )}
        </span>
      )}
    </>
  );
}
