import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ask } from '../../lib/graphql/client.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { BillsChart } from './bills-chart.tsx';
import { BillsEntries } from './bills-entries.tsx';
import { BillsForm } from './bills-form.tsx';
import { BillsPaste } from './bills-paste.tsx';
import { Bills } from './bills-queries.ts';
import { BillsVerdict } from './bills-verdict.tsx';
import { counted } from '../../lib/units/format.ts';

/** The fuel record of a tank or meter: what it says of the houses, the picture, its lines, and how to change them. */
export function BillsPart({ supplyId }: { supplyId: string }) {
  const { units } = useUnits();
  const [doing, setDoing] = useState<'lines' | 'paste' | null>(null);
  const [open, setOpen] = useState(false);
  const { data, error } = useQuery({
    queryKey: ['bills', supplyId],
    queryFn: () => ask(Bills, { id: supplyId }),
    placeholderData: (d) => d,
  });
  if (error) return <p className="fault">{error.message}</p>;
  const group = data?.supplyGroup;
  if (!group) return <p className="quiet">Reading the tickets and bills.</p>;
  const { bills, fuel, kind } = group;
  const what = kind === 'TANK' ? 'tickets' : 'bills';
  const others = group.houses.length > 1 ? ` and the ${String(group.houses.length)} houses behind it` : '';
  if (doing === 'lines')
    return <BillsForm supplyId={supplyId} kind={kind} fuel={fuel} bills={bills} units={units} close={() => setDoing(null)} />;
  if (doing === 'paste') return <BillsPaste supplyId={supplyId} fuel={fuel} kind={kind} close={() => setDoing(null)} />;
  return (
    <section aria-label="tickets and bills">
      <h2>
        What the {what} say of {group.name}
        {others}
      </h2>
      <BillsVerdict bills={bills} fuel={fuel} />
      {bills.intervals.length > 0 && <BillsChart bills={bills} fuel={fuel} units={units} />}
      <p className="below">
        {bills.entries.length > 0 && (
          <button className="link" aria-expanded={open} onClick={() => setOpen(!open)}>
            {open ? 'fold the lines' : bills.entries.length === 1 ? 'the line' : `all ${counted(bills.entries.length, 'line')}`}
          </button>
        )}{' '}
        <button className="link" onClick={() => setDoing('lines')}>
          {bills.entries.length > 0 ? `change the ${what}` : `enter ${what}`}
        </button>{' '}
        <button className="link" onClick={() => setDoing('paste')}>
          bring in a sheet
        </button>
      </p>
      {open && <BillsEntries entries={bills.entries} />}
    </section>
  );
}
