import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useLocation, useSearchParams } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { counted, dollars } from '../../lib/units/format.ts';
import { FarmLedger } from './farm-ledger.tsx';
import { UndoNotice } from '../../components/undo-notice.tsx';

const Farms = graphql(`
  query Farms($text: String, $after: String) {
    coop {
      houseCount
      farms(text: $text, first: 50, after: $after) {
        total
        next
        items {
          id
          name
          place
          stationName
          floorAreaM2
          houses {
            id
            name
            dataGrade
          }
          bills {
            floorAreaM2
            houseIds
            supplies {
              id
              name
              fuel
              contract {
                kind
              }
            }
            usd {
              p10
              p25
              p50
              p75
              p90
            }
          }
          worthMost {
            id
            title
            house {
              name
            }
            result {
              savingUsd {
                p50
              }
              lastingPayback {
                p50Season
                neverShare
              }
            }
          }
        }
      }
    }
  }
`);

/** All member farms: what each pays for heat, how sure that is, and what is worth most there. */
export function FarmsPage() {
  const [params, setParams] = useSearchParams();
  const text = params.get('find') ?? '';
  const after = params.get('after');
  const { data, error } = useQuery({
    queryKey: ['farms', text, after],
    queryFn: () => ask(Farms, { text: text || null, after }),
    placeholderData: (d) => d,
  });
  const arrived = useLocation().state as { said: string; changeId: string } | null;
  const [notice, setNotice] = useState(arrived);
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the farms.</p>;
  const page = data.coop.farms;
  const dearest = page.items
    .flatMap((f) => f.bills.map((b) => ({ name: f.name, usd: b.usd })))
    .reduce<{ name: string; usd: { p50: number; p90: number } } | null>((most, b) => (most && most.usd.p50 >= b.usd.p50 ? most : b), null);
  return (
    <>
      <h1>
        <b>{page.total}</b> {page.total === 1 ? 'farm' : 'farms'}
        {text ? ` of that name or place` : ` with ${counted(data.coop.houseCount, 'house')}`}
        {dearest && (
          <>
            ; the dearest bill is {dearest.name}&apos;s, <b>{dollars(dearest.usd.p50)}</b> in a middling season and over{' '}
            <b>{dollars(dearest.usd.p90)}</b> in one of ten
          </>
        )}
        .
      </h1>
      {notice && <UndoNotice {...notice} close={() => setNotice(null)} />}
      <p className="acts">
        <Link to="/houses/new">add a house</Link>
        <Link to="/import">bring in a sheet of farms and houses</Link>
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
      {page.items.length > 0 && <FarmLedger farms={page.items} />}
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
