import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useLocation, useSearchParams } from 'react-router';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { area, fuelName, length } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { DeleteItem } from './delete-item.tsx';
import { UndoNotice } from './undo-notice.tsx';

const Farms = graphql(`
  query Farms($text: String, $after: String) {
    coop {
      houseCount
      weatherStations {
        id
        name
      }
      farms(text: $text, first: 50, after: $after) {
        total
        next
        items {
          id
          name
          place
          stationId
          revision
          floorAreaM2
          houses {
            id
            name
            shape
            widthM
            lengthM
            bays
            covering
            fuel
            dataGrade
          }
        }
      }
    }
  }
`);

const Station = graphql(`
  mutation UseStation($farmId: ID!, $stationId: ID!, $revision: Int!, $requestId: ID!) {
    useStation(farmId: $farmId, stationId: $stationId, expectedRevision: $revision, requestId: $requestId) {
      changeId
      conflict
      faults {
        message
        remedy
      }
    }
  }
`);

const shapes = { HOOP: 'hoop', GOTHIC_ARCH: 'Gothic arch', GABLE: 'gable', GUTTER_CONNECTED: 'gutter-connected' } as const;

export function FarmsPage() {
  const { units } = useUnits();
  const [params, setParams] = useSearchParams();
  const text = params.get('find') ?? '';
  const after = params.get('after');
  const { data, error } = useQuery({
    queryKey: ['farms', text, after],
    queryFn: () => ask(Farms, { text: text || null, after }),
    placeholderData: (d) => d,
  });
  const queries = useQueryClient();
  const arrived = useLocation().state as { said: string; changeId: string } | null;
  const [notice, setNotice] = useState(arrived);
  const station = useMutation({
    mutationFn: (v: { farmId: string; stationId: string; revision: number }) => ask(Station, { ...v, requestId: requestId() }),
    onSuccess: () => queries.invalidateQueries(),
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the farms.</p>;
  const page = data.coop.farms;
  return (
    <>
      <h1>
        <b>{page.total}</b> farms{text ? ` match "${text}"` : ''}; the co-op heats <b>{data.coop.houseCount}</b> houses.
      </h1>
      {notice && <UndoNotice {...notice} close={() => setNotice(null)} />}
      <p>
        <Link to="/houses/new">add a house</Link> · <Link to="/import">bring in a sheet of farms and houses</Link> ·{' '}
        <Link to="/houses">find houses, change many at once</Link>
      </p>
      {data.coop.houseCount === 0 && (
        <p className="lead">
          Here stand the member farms with their houses. Answer nine questions about a first house, or bring in a sheet; nothing has to be
          complete.
        </p>
      )}
      <label style={{ maxWidth: 320 }}>
        <span>find a farm by name or place</span>
        <input value={text} onChange={(e) => setParams(e.target.value ? { find: e.target.value } : {}, { replace: true })} />
      </label>
      {page.items.map((f) => (
        <section key={f.id}>
          <h2>
            <Link to={`/farms/${f.id}`}>{f.name}</Link>
          </h2>
          <p className="caption">
            {f.place}; {area(f.floorAreaM2, units)} of floor; winters of{' '}
            <select
              aria-label={`station of ${f.name}`}
              value={f.stationId ?? ''}
              onChange={(e) => station.mutate({ farmId: f.id, stationId: e.target.value, revision: f.revision })}
            >
              {!f.stationId && <option value="">no station yet</option>}
              {data.coop.weatherStations.map((w) => (
                <option key={w.id} value={w.id}>
                  {w.name}
                </option>
              ))}
            </select>
          </p>
          <p>
            <Link to={`/houses/new?farm=${f.id}`}>add a house to {f.name}</Link> ·{' '}
            <DeleteItem
              id={f.id}
              revision={f.revision}
              name={f.name}
              done={(changeId) => setNotice({ said: `${f.name} is deleted.`, changeId })}
            />
          </p>
          {station.data?.useStation.conflict && station.variables.farmId === f.id && (
            <p className="fault">Somebody changed this farm meanwhile; the page shows theirs now. Choose again.</p>
          )}
          <table className="stack">
            <thead>
              <tr>
                <th scope="col">house</th>
                <th scope="col">shape</th>
                <th scope="col">size</th>
                <th scope="col">covering</th>
                <th scope="col">fuel</th>
                <th scope="col">data grade</th>
              </tr>
            </thead>
            <tbody>
              {f.houses.map((h) => (
                <tr key={h.id}>
                  <td>
                    <Link to={`/houses/${h.id}`}>{h.name}</Link>
                  </td>
                  <td>
                    {shapes[h.shape]}
                    {h.bays > 1 ? `, ${String(h.bays)} bays` : ''}
                  </td>
                  <td>
                    {length(h.widthM, units)} × {length(h.lengthM, units)}
                  </td>
                  <td>{h.covering}</td>
                  <td>{fuelName[h.fuel]}</td>
                  <td>{h.dataGrade}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ))}
      {page.next && (
        <p className="below">
          <button className="link" onClick={() => setParams({ ...(text ? { find: text } : {}), after: page.next ?? '' })}>
            more farms
          </button>
        </p>
      )}
    </>
  );
}
