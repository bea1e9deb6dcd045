import { dollars, figure } from '../lib/units/format.ts';

/** The chief figure of a row: on a phone, where the column's head is gone, with its dollar sign. */
export function Chief({ usd }: { usd: number }) {
  return (
    <>
      <span className="wide">{figure(usd)}</span>
      <span className="phone">{dollars(usd)}</span>
    </>
  );
}
