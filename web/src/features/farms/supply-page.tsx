import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useNavigate, useParams } from 'react-router';
import { Crumbs } from '../../components/crumbs.tsx';
import { usePageName } from '../../components/page-name.ts';
import { ask } from '../../lib/graphql/client.ts';
import { fuelName } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { BillsPart } from './bills-part.tsx';
import { DeleteItem } from './delete-item.tsx';
import { Supply } from './farm-queries.ts';
import { ItemHistory } from '../../components/item-history.tsx';
import { OwnPricePart } from './own-price.tsx';
import { PastPart } from './past-part.tsx';
import { SupplyContracts } from './supply-contracts.tsx';
import { SupplyForm } from './supply-form.tsx';

/** A tank or meter: who hangs on it, how it pays, what it was billed. */
export function SupplyPage() {
  const { supplyId = '' } = useParams();
  const { amount } = useUnits();
  const navigate = useNavigate();
  const [editing, setEditing] = useState<'supply' | null>(null);
  const { data, error } = useQuery({
    queryKey: ['supply', supplyId],
    queryFn: () => ask(Supply, { id: supplyId }),
    placeholderData: (d) => d,
  });
  usePageName(data?.supplyGroup?.name, data?.supplyGroup?.farm.name);
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the tank or meter.</p>;
  const s = data.supplyGroup;
  if (!s)
    return (
      <p>
        There is no such tank or meter. <Link to="/farms">All farms</Link>
      </p>
    );
  const reckoned = s.houses.reduce((sum, h) => sum + (h.heat?.fuelKwh ?? 0), 0);
  return (
    <>
      <Crumbs
        above={[
          ['/farms', 'Farms'],
          [`/farms/${s.farm.id}`, s.farm.name],
        ]}
        here={s.name}
      />
      <h1>
        {s.farm.name}, {s.name}: {fuelName[s.fuel]} for{' '}
        <b>
          {s.houses.length} {s.houses.length === 1 ? 'house' : 'houses'}
        </b>
        {reckoned > 0 && (
          <>
            , <b>{amount(reckoned, s.fuel)}</b> in a middling winter
          </>
        )}
        .
      </h1>
      <p className="lead">
        It feeds{' '}
        {s.houses.map((h, i) => (
          <span key={h.id}>
            {i > 0 && ', '}
            <Link to={`/houses/${h.id}`}>{h.name}</Link>
          </span>
        ))}
        {s.otherUses.length > 0 ? `, and ${s.otherUses.join(', ')}` : '; nothing else is said to burn from it'}.
      </p>
      {editing === 'supply' ? (
        <SupplyForm farmId={s.farm.id} supply={s} close={() => setEditing(null)} />
      ) : (
        <div className="acts">
          <button className="link" onClick={() => setEditing('supply')}>
            change the tank or meter
          </button>
          {s.houses.length === 0 && (
            <DeleteItem
              id={s.id}
              revision={s.revision}
              name={s.name}
              done={(changeId) => void navigate('/farms', { state: { said: `${s.name} is deleted.`, changeId } })}
            />
          )}
        </div>
      )}
      <SupplyContracts supply={s} />
      <OwnPricePart supply={s} />
      <PastPart supplyId={s.id} />
      <BillsPart supplyId={s.id} />
      <ItemHistory id={s.id} revision={s.revision} />
    </>
  );
}
