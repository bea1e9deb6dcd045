import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useParams, useSearchParams } from 'react-router';
import { Crumbs } from '../../components/crumbs.tsx';
import { usePageName } from '../../components/page-name.ts';
import { ask } from '../../lib/graphql/client.ts';
import { counted, heatUnit, length, ofHundred } from '../../lib/units/format.ts';
import { chosenFirst, inSentence } from '../../lib/units/told.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { HeaterSizing } from './heater-sizing.tsx';
import { BillsPart } from './bills-part.tsx';
import { HouseActions } from './house-actions.tsx';
import { HouseDrawing } from './house-drawing.tsx';
import { HouseForm } from './house-form.tsx';
import { HouseHeat } from './house-heat.tsx';
import { HouseOptions } from './house-options.tsx';
import { answerOf, neverWords } from './house-answer.ts';
import { House } from './house-query.ts';
import { ItemHistory } from '../../components/item-history.tsx';
import { OptionSetForm } from './option-set-form.tsx';

export function HousePage() {
  const { houseId = '' } = useParams();
  const [params, setParams] = useSearchParams();
  const { units, say, amount } = useUnits();
  const [editing, setEditing] = useState(false);
  const [choosing, setChoosing] = useState(false);
  const key = params.get('option');
  const { data, error } = useQuery({
    queryKey: ['house', houseId, key],
    queryFn: () => ask(House, { id: houseId, key: key ?? 'none' }),
    placeholderData: (d) => d,
  });
  usePageName(data?.house?.name, data?.house?.farm.name);
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the house.</p>;
  const house = data.house;
  if (!house)
    return (
      <p>
        There is no such house. <Link to="/farms">All farms</Link>
      </p>
    );
  const { geometry: g, standing, chosen } = house;
  const form = editing ? <HouseForm house={house} close={() => setEditing(false)} /> : null;
  if (!g || !standing) {
    return (
      <>
        <h1>
          {house.farm.name}, {house.name} cannot be reckoned yet.
        </h1>
        {house.faults.map((f) => (
          <p key={f.message} className="fault">
            {chosenFirst(f.message, units)} {chosenFirst(f.remedy, units)}
          </p>
        ))}
        {form ?? (
          <button className="filled" onClick={() => setEditing(true)}>
            Change the house
          </button>
        )}
      </>
    );
  }
  const ways = [
    ['roof', standing.roofKwh],
    ['side walls', standing.sideWallsKwh],
    ['end walls', standing.endWallsKwh],
    ['edge of the floor', standing.perimeterKwh],
    ['air leaks', standing.airKwh],
  ] as const;
  const all = ways.reduce((s, [, v]) => s + v, 0) + standing.purgeKwh;
  const worst = [...ways].sort((p, q) => q[1] - p[1])[0] ?? ways[0];
  const answer = answerOf(house.options);
  const picked = answer.kind === 'best' ? answer.option : undefined;
  const other = key && key !== 'none' ? (chosen ?? undefined) : undefined;
  const active = house.options.find((o) => o.key === key);
  const paid = picked?.result?.lastingPayback;
  const shown = active && active.key !== 'none' && active.key !== picked?.key ? active : undefined;
  return (
    <>
      <Crumbs
        above={[
          ['/farms', 'Farms'],
          [`/farms/${house.farm.id}`, house.farm.name],
        ]}
        here={house.name}
      />
      <h1>
        {house.farm.name}, {house.name} loses <b>{Math.round((100 * worst[1]) / all)} %</b> of its heat through the {worst[0]}
        {picked && paid?.p50Season ? (
          <>
            ; {inSentence(say(picked.title))} pays back in <b>{counted(paid.p50Season, 'season')}</b>
            {paid.neverShare === 0 ? (
              ' in the middle, and in every future reckoned.'
            ) : (
              <>
                , or never in <b>{ofHundred(paid.neverShare)} of 100</b> futures.
              </>
            )}
          </>
        ) : answer.kind === 'none' ? (
          <>
            ; of {counted(answer.count, 'option')} studied <b>none pays back</b> in the middle of the futures.
          </>
        ) : (
          '.'
        )}
      </h1>
      <p className="lead">
        {house.backCheck ? (
          <>
            Newest winter billed in full ({house.backCheck.seasonName}), all behind its tank or meter: we reckon{' '}
            <b>{amount(house.backCheck.reckonedKwhFuel, house.fuel)}</b>; the bills say{' '}
            <b>{amount(house.backCheck.billedKwhFuel, house.fuel)}</b>: {house.backCheck.verdict}.
          </>
        ) : (
          'No fuel record: grade C, so every figure is wide. Two winters of bills would halve that.'
        )}
        {shown?.result && !shown.isRunningChange && (
          <>
            {' '}
            Shown below: {inSentence(say(shown.title))}, which{' '}
            {shown.result.lastingPayback.p50Season
              ? `pays back in ${counted(shown.result.lastingPayback.p50Season, 'season')}, `
              : 'under half the futures ever pay back, '}
            {neverWords(shown.result.lastingPayback.neverShare)}.
          </>
        )}
      </p>
      {form}
      <div className="acts">
        {!editing && (
          <button className="link" onClick={() => setEditing(true)}>
            change the house
          </button>
        )}
        <Link to={`/houses/${house.id}/sheet${key && key !== 'none' ? `?option=${key}` : ''}`}>sheet for the grower to print</Link>
        <HouseActions house={house} />
      </div>
      {house.supplies.length > 0 && (
        <p className="caption">
          {house.supplies.map((s, i) => (
            <span key={s.supplyGroupId}>
              {i === 0 ? 'Fed by ' : ' and '}
              <Link to={`/supplies/${s.supplyGroupId}`}>
                {house.farm.supplyGroups.find((g) => g.id === s.supplyGroupId)?.name ?? 'its supply'}
              </Link>
            </span>
          ))}
          .
        </p>
      )}
      <div className="two">
        <section>
          <h2>Where the heat of a middling season goes</h2>
          <p className="caption">
            To scale; {heatUnit(units)} of the winter {standing.seasonName} at {house.farm.stationName}. Arrows are as wide as the loss:{' '}
            <b>outline as it stands, solid with the option</b>
            {active && active.key !== 'none' ? `: ${inSentence(say(active.title))}` : '; choose one below'}.
          </p>
          <HouseDrawing
            house={{ ...g, bays: house.bays }}
            standing={standing}
            chosen={other}
            withFoam={(active?.parts.includes('foam') ?? false) || house.installedCodes.includes('foam')}
            withCurtain={(active?.parts.includes('curtain') ?? false) || house.installedCodes.includes('curtain')}
            units={units}
          />
        </section>
        <HouseHeat standing={standing} other={other} fuel={house.fuel} units={units} />
      </div>
      <HouseOptions
        options={house.options}
        active={key ?? 'none'}
        choose={(k) => setParams({ option: k }, { replace: true })}
        standing={{ fuelKwh: standing.fuelKwh, filmDueYear: house.filmDueYear ?? null }}
        fuel={house.fuel}
        units={units}
      />
      {choosing ? (
        <OptionSetForm houseId={house.id} close={() => setChoosing(false)} />
      ) : (
        <p>
          <button className="link" onClick={() => setChoosing(true)}>
            choose which options are studied
          </button>
        </p>
      )}
      {standing.fromNormals && (
        <section>
          <h2>Weather: monthly normals only</h2>
          <p className="caution">{house.farm.normalsWords.join(' ')}</p>
          <p>How large a heater must be is not said: no cold hour of this place was recorded. The peak above is one of a made winter.</p>
        </section>
      )}
      <HeaterSizing houseId={house.id} optionKey={key ?? undefined} units={units} />
      {house.supplyGroups.map((s) => (
        <BillsPart key={s.id} supplyId={s.id} />
      ))}
      <section>
        <h2>What was taken for granted</h2>
        <p className="caption">Correct any of it; each is a field of the form.</p>
        {house.fromDefaults.map((d) => (
          <p key={d.field + d.title} className="small" style={{ margin: 0 }}>
            {say(d.title)}
            {d.value
              ? `: ${d.unit === 'm' ? length(d.value, units) : `${String(Math.round(d.value * 100) / 100)}${d.unit === '1' || d.title.endsWith('an hour') ? '' : ` ${d.unit}`}`}`
              : ''}{' '}
            <span className="quiet">({d.source})</span>
          </p>
        ))}
        {house.retrofitsInstalled.length > 0 && <p className="small">Already there: {house.retrofitsInstalled.join('; ')}.</p>}
      </section>
      <ItemHistory id={house.id} revision={house.revision} />
    </>
  );
}
