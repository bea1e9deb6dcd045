import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useNavigate, useParams } from 'react-router';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { GradeMark } from '../../components/grade-mark.tsx';
import { Crumbs } from '../../components/crumbs.tsx';
import { usePageName } from '../../components/page-name.ts';
import { ask } from '../../lib/graphql/client.ts';
import { area, fuelName, heat, heatUnit, length } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { DeleteItem } from './delete-item.tsx';
import { FarmForm } from './farm-form.tsx';
import { FarmMembership } from './farm-membership.tsx';
import { Farm } from './farm-queries.ts';
import { shapes } from './house-words.ts';
import { ItemHistory } from '../../components/item-history.tsx';
import { QuoteList } from './quote-list.tsx';
import { SupplyForm } from './supply-form.tsx';

const shapeName = Object.fromEntries(shapes);

/** A farm with its houses, tanks, meters and quotes. */
export function FarmPage() {
  const { farmId = '' } = useParams();
  const { units, amount } = useUnits();
  const navigate = useNavigate();
  const [editing, setEditing] = useState<'farm' | 'supply' | null>(null);
  const { data, error } = useQuery({ queryKey: ['farm', farmId], queryFn: () => ask(Farm, { id: farmId }), placeholderData: (d) => d });
  usePageName(data?.farm?.name);
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the farm.</p>;
  const farm = data.farm;
  if (!farm)
    return (
      <p>
        There is no such farm. <Link to="/farms">All farms</Link>
      </p>
    );
  const demand = farm.houses.reduce((s, h) => s + (h.heat?.demandKwh ?? 0), 0);
  return (
    <>
      <Crumbs above={[['/farms', 'Farms']]} here={farm.name} />
      <h1>
        {farm.name} heats{' '}
        <b>
          {farm.houses.length} {farm.houses.length === 1 ? 'house' : 'houses'}
        </b>
        {demand > 0 && (
          <>
            {' '}
            with{' '}
            <b>
              {heat(demand, units)} {heatUnit(units)}
            </b>{' '}
            in a middling winter
          </>
        )}
        .
      </h1>
      <p className="lead">
        {farm.place ? `${farm.place}; ` : ''}
        {area(farm.floorAreaM2, units)} of floor;{' '}
        {farm.stationName ? `winters of ${farm.stationName}` : 'no weather station chosen yet, so nothing can be reckoned'}.
      </p>
      {farm.normalsWords.length > 0 && <p className="caution">{farm.normalsWords.join(' ')}</p>}
      {editing === 'farm' ? (
        <FarmForm farm={farm} coop={data.coop} close={() => setEditing(null)} />
      ) : (
        <div className="acts">
          <button className="link" onClick={() => setEditing('farm')}>
            change the farm
          </button>
          <DeleteItem
            id={farm.id}
            revision={farm.revision}
            name={farm.name}
            done={(changeId) => void navigate('/farms', { state: { said: `${farm.name} is deleted.`, changeId } })}
          />
        </div>
      )}
      <section>
        <h2>Houses</h2>
        <LedgerTable name="houses of the farm" className="stack">
          <thead>
            <tr>
              <th scope="col">house</th>
              <th scope="col">shape and size</th>
              <th scope="col">covering</th>
              <th scope="col" className="n">
                a middling winter
              </th>
              <th scope="col">data grade</th>
            </tr>
          </thead>
          <tbody>
            {farm.houses.map((h) => (
              <tr key={h.id}>
                <td>
                  <Link to={`/houses/${h.id}`}>{h.name}</Link>
                </td>
                <td>
                  {shapeName[h.shape]}
                  {h.bays > 1 ? `, ${String(h.bays)} bays` : ''}, {length(h.widthM, units)} × {length(h.lengthM, units)}
                </td>
                <td>{h.covering}</td>
                <td className="n">{h.heat ? `${amount(h.heat.fuelKwh, h.fuel)} ${fuelName[h.fuel]}` : 'not reckoned yet'}</td>
                <td>
                  <GradeMark grade={h.dataGrade} />
                </td>
              </tr>
            ))}
          </tbody>
        </LedgerTable>
        <p>
          <Link to={`/houses/new?farm=${farm.id}`}>add a house</Link>
        </p>
      </section>
      <section>
        <h2>Tanks and meters</h2>
        <ul>
          {farm.supplyGroups.map((s) => (
            <li key={s.id}>
              <Link to={`/supplies/${s.id}`}>{s.name}</Link>: {fuelName[s.fuel]} for{' '}
              {s.houses.map((h) => h.name).join(', ') || 'no house yet'};{' '}
              {s.contract?.kind === 'FIXED' ? `$${String(s.contract.priceUsdPerUnit)} a ${s.contract.unit} fixed` : 'monthly index'};{' '}
              {s.recordedLines > 0 ? `${String(s.recordedLines)} tickets or bills` : 'no tickets or bills yet'}
            </li>
          ))}
        </ul>
        {editing === 'supply' ? (
          <SupplyForm farmId={farm.id} supply={{ name: '', kind: 'TANK', fuel: 'PROPANE', otherUses: [] }} close={() => setEditing(null)} />
        ) : (
          <button className="link" onClick={() => setEditing('supply')}>
            add a tank or meter
          </button>
        )}
      </section>
      <QuoteList farm={farm} />
      <FarmMembership farm={farm} />
      <ItemHistory id={farm.id} revision={farm.revision} />
    </>
  );
}
