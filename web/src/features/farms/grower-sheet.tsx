import { useQuery } from '@tanstack/react-query';
import { Link, useParams, useSearchParams } from 'react-router';
import { Sheet } from '../../components/sheet.tsx';
import { usePageName } from '../../components/page-name.ts';
import { ask } from '../../lib/graphql/client.ts';
import { dollars, heatUnit, ofHundred } from '../../lib/units/format.ts';
import { inSentence } from '../../lib/units/told.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { GrowerPoints } from './grower-points.tsx';
import { GrowerWarnings } from './grower-warnings.tsx';
import { HouseSection } from './house-section.tsx';
import { GrowerSheet, type SheetHouse, type SheetOption } from './sheet-query.ts';
import { fromTo, offered, withRange } from './sheet-words.ts';

const DRAWING_WIDTH = 330;
const DRAWING_HEIGHT = 90;
const DRAWING_MARGIN = 46;

/** One page for the grower's pin board, letter or A4: the house, the work offered, what it saves and costs, its dangers. */
export function GrowerSheetPage() {
  const { houseId = '' } = useParams();
  const [params] = useSearchParams();
  const { say } = useUnits();
  const { data, error } = useQuery({ queryKey: ['grower-sheet', houseId], queryFn: () => ask(GrowerSheet, { id: houseId }) });
  const house = data?.house;
  usePageName('sheet', house?.name, house?.farm.name);
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Reading the sheet.</p>;
  if (!house)
    return (
      <h1>
        There is no such house. <Link to="/farms">All farms</Link>
      </h1>
    );
  const awards = house.awards.filter((a) => !a.returnedOn);
  const option = offered(
    house.options,
    params.get('option'),
    awards.map((a) => a.optionId),
  );
  const award = awards.find((a) => a.optionId === option?.id);
  const study = data.coop.newestStudy;
  return (
    <Sheet
      invented={data.coop.isDemo}
      acts={
        <>
          <Link to={`/houses/${house.id}`}>the house</Link>
          {option && <Link to={`/options/${encodeURIComponent(option.id)}`}>{say(option.title)}</Link>}
        </>
      }
      foot={[
        data.coop.name,
        `${house.farm.name}, ${house.name}`,
        study
          ? `study ${String(study.number)} of ${study.askedAt.slice(0, 10)}, ${study.futuresCount.toLocaleString('en-US')} futures${study.changedSince.length > 0 ? ', out of date: inputs changed since' : ''}`
          : 'no study yet',
        award && `${award.round}${award.decisionNumber ? `, decision ${String(award.decisionNumber)}` : ''}`,
      ]
        .filter(Boolean)
        .join('; ')}
    >
      <p className="small quiet">
        Sheet for the grower. {data.coop.name}; {house.farm.name}, {house.name}
      </p>
      <Heading house={house} option={option} />
      <Drawing house={house} option={option} />
      <div className="points">
        <GrowerPoints
          house={house}
          option={option}
          award={award}
          exposure={data.exposure ?? undefined}
          isOld={(study?.changedSince.length ?? 0) > 0}
        />
        <GrowerWarnings option={option} award={award} coop={data.coop.name} />
      </div>
    </Sheet>
  );
}

function Heading({ house, option }: { house: SheetHouse; option: SheetOption | undefined }) {
  const { say } = useUnits();
  const r = option?.result;
  if (!option || !r) return <h1>{house.name}: no work is studied for this house yet.</h1>;
  return (
    <h1>
      {say(option.title)} saves <b>{withRange(r.savingUsd)}</b> a season
      {option.isRunningChange ? (
        ' and costs nothing to begin.'
      ) : (
        <>
          ; it costs <b>{dollars(option.outlayUsd)}</b>
          {option.outlayRange && ` (${fromTo(option.outlayRange)})`} and never pays back in{' '}
          <b>{ofHundred(r.lastingPayback.neverShare)} of 100</b> futures.
        </>
      )}
    </h1>
  );
}

function Drawing({ house, option }: { house: SheetHouse; option: SheetOption | undefined }) {
  const { units, say } = useUnits();
  const { geometry: g, heat: standing } = house;
  if (!g || !standing) return null;
  const scale = Math.min((DRAWING_WIDTH - 2 * DRAWING_MARGIN) / g.overallWidthM, DRAWING_HEIGHT / g.ridgeM);
  const most = Math.max(standing.roofKwh, standing.sideWallsKwh, standing.endWallsKwh, standing.airKwh, standing.perimeterKwh, 1);
  const has = (code: string) => (option?.parts.includes(code) ?? false) || house.installedCodes.includes(code);
  return (
    <div className="sheet-drawing">
      <HouseSection
        house={{ ...g, bays: house.bays }}
        standing={standing}
        withFoam={has('foam')}
        withCurtain={has('curtain')}
        units={units}
        width={DRAWING_WIDTH}
        scale={scale}
        perKwh={40 / most}
        narrow
      />
      <p className="small quiet">
        To scale; {heatUnit(units)} of heat of the middling {standing.fromNormals ? 'winter' : 'recorded winter'} {standing.seasonName} as
        the house stands, one winter without its range.
        {option && option.parts.length > 0 && ` With ${inSentence(say(option.title))} drawn in.`}
      </p>
    </div>
  );
}
