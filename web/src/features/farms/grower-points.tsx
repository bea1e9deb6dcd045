import { area, counted, dollars, fuelName, length, type UnitSystem } from '../../lib/units/format.ts';
import { inSentence } from '../../lib/units/told.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { Point } from '../../components/sheet-point.tsx';
import type { SheetExposure, SheetHouse, SheetOption } from './sheet-query.ts';
import { cheaper, fromTo, fuelRange, paybackWords, quantityWords, withRange } from './sheet-words.ts';

export type SheetAward = SheetHouse['awards'][number];

interface Props {
  house: SheetHouse;
  option: SheetOption | undefined;
  award: SheetAward | undefined;
  exposure: SheetExposure | undefined;
  isOld: boolean;
}

const OTHER_WAYS = 3;
const CHEAPER_WORKS = 3;
const GRANTED = 3;

/** How far the house's own use is in doubt beside winters and prices, by data grade. */
const doubt = {
  A: 'That is winters and prices; your use is as the bills put it.',
  B: 'That is winters and prices; besides, your own use is known to about 15 % either way.',
  C: 'That is winters and prices; besides, with no fuel record your own use is known to about 30 % either way.',
} as const;

/** The points of the sheet that tell figures; each figure has its range, or says that it is one winter's. */
export function GrowerPoints({ house, option, award, exposure, isOld }: Props) {
  const { units, say, amount } = useUnits();
  const own = exposure?.ways.find((w) => w.isOwn);
  const withIt = exposure?.options.find((o) => o.key === option?.key)?.costUsd;
  const others = (exposure?.ways ?? []).filter((w) => !w.isOwn && !w.isReckoned).slice(0, OTHER_WAYS);
  const first = cheaper(house.options, option).slice(0, CHEAPER_WORKS);
  const running = (option?.running ?? []).filter((l) => l.usd !== 0);
  const r = option?.result;
  return (
    <>
      <Point no={1} name="Your house">
        {house.bays > 1 ? `${counted(house.bays, 'bay')} of ` : ''}
        {length(house.widthM, units)} by {length(house.lengthM, units)}, {house.geometry ? area(house.geometry.floorM2, units) : ''} of
        floor, {inSentence(house.covering)}, {fuelName[house.fuel]}; weather of {house.farm.stationName ?? 'no station'}; data grade{' '}
        {house.dataGrade}
        {house.dataGrade === 'C' && ', no fuel record, so every figure is wide'}.
      </Point>
      <Point no={2} name="What you burn">
        {house.backCheck
          ? `Newest winter billed in full, ${house.backCheck.seasonName}: the bills say ${amount(house.backCheck.billedKwhFuel, house.fuel)}, we reckon ${amount(house.backCheck.reckonedKwhFuel, house.fuel)} for all behind the tank or meter: ${house.backCheck.verdict}. `
          : 'No bills are on file to check against. '}
        {own &&
          exposure &&
          `This house alone in ${exposure.season}: ${fuelRange(own.units, own.unit, exposure.heatKwh, units)}, one in ten winters under and one in ten over.`}
      </Point>
      <Point no={3} name="Where the money goes">
        {own && house.heat ? losses(house.heat, own.costUsd) : 'Not reckoned yet.'}
      </Point>
      {option && (
        <Point no={4} name="The work offered">
          {say(option.title)}
          {option.skills.length > 0 && `; it asks for ${option.skills.join(', ')}`}. {cost(option, award)}
        </Point>
      )}
      {r && (
        <Point no={5} name="It saves">
          {withRange(r.savingUsd)} a season, the mean of all seasons after running and renewals.
        </Point>
      )}
      {r && option && !option.isRunningChange && (
        <Point no={6} name="Your money is back">
          {paybackWords(r.lastingPayback)}. Winters are counted from when it is built, on the whole cost before any grant.
        </Point>
      )}
      {option && (
        <Point no={7} name="Your work">
          {running.length === 0
            ? 'No running cost is taken.'
            : `${running.map((l) => `${inSentence(say(l.what))}${quantityWords(l.quantity, l.unit)} ${dollars(l.usd)}`).join('; ')}: ${dollars(option.runningUsd)} a season as taken, yours to correct.`}
          {option.lifeYears != null && ` It lasts about ${String(Math.round(option.lifeYears))} years.`}
        </Point>
      )}
      {option && (
        <Point no={8} name="What it takes from the crop">
          {option.drawbacks.length > 0 ? option.drawbacks.map((d) => say(d)).join(' ') : 'Nothing known.'}{' '}
          {r && (r.notCounted.length > 0 ? `Not counted: ${r.notCounted.join(', ')}.` : 'Counted in the saving.')}
        </Point>
      )}
      {own && exposure && (
        <Point no={9} name={`Your bill in ${exposure.season}`}>
          As it stands {withRange(own.costUsd)}
          {withIt ? `; with the work ${withRange(withIt)}` : ''}. {doubt[house.dataGrade]}
          {isOld && ' Inputs were changed since the study: run it again.'}
        </Point>
      )}
      <Point no={10} name="The same heat bought otherwise">
        {others.length > 0
          ? `${others.map((w) => `${w.name} (${fuelName[w.fuel]}) ${fromTo(w.costUsd)}`).join('; ')}, one in ten under and over.`
          : 'No other offer is on file for the tank or meter.'}
      </Point>
      <Point no={11} name="Cheaper first">
        {first.length > 0
          ? `${first.map((o) => `${inSentence(say(o.title))}: ${o.result ? fromTo(o.result.savingUsd) : ''} a season`).join('; ')}.`
          : 'Nothing cheaper that pays is studied for this house.'}
      </Point>
      <Point no={12} name="Taken for granted; correct it">
        {house.fromDefaults.length === 0
          ? 'Nothing: all is from you.'
          : `${house.fromDefaults
              .slice(0, GRANTED)
              .map((d) => `${inSentence(say(d.title))} ${valueOf(d, units)}`.trim())
              .join('; ')}${house.fromDefaults.length > GRANTED ? `; and ${String(house.fromDefaults.length - GRANTED)} more` : ''}.`}
      </Point>
    </>
  );
}

const valueOf = (d: { title: string; value: number; unit: string }, u: UnitSystem): string =>
  d.value === 0
    ? ''
    : d.unit === 'm'
      ? length(d.value, u)
      : `${String(Math.round(d.value * 100) / 100)}${d.unit === '1' || d.title.endsWith('an hour') ? '' : ` ${d.unit}`}`;

/** The season's bill by the way the heat leaves; every way with the range of the whole bill. */
function losses(h: NonNullable<SheetHouse['heat']>, bill: { p10: number; p90: number }): string {
  const ways = [
    ['roof', h.roofKwh],
    ['side walls', h.sideWallsKwh],
    ['end walls', h.endWallsKwh],
    ['edge of the floor', h.perimeterKwh],
    ['air leaks', h.airKwh],
    ['venting', h.purgeKwh],
  ] as const;
  const all = ways.reduce((s, [, kwh]) => s + kwh, 0);
  const told = ways
    .filter(([, kwh]) => kwh / all >= 0.01)
    .sort((a, b) => b[1] - a[1])
    .map(
      ([name, kwh]) =>
        `${name} ${String(Math.round((100 * kwh) / all))} %, ${fromTo({ p10: (bill.p10 * kwh) / all, p90: (bill.p90 * kwh) / all })}`,
    );
  return `${told.join('; ')} a season; shares of the middling winter.`;
}

/** What it costs with its range, the grant and when it comes, and what is left to the grower. */
function cost(option: SheetOption, award: SheetAward | undefined): string {
  if (option.isRunningChange) return 'It costs nothing to begin.';
  const range = option.outlayRange;
  const whole = `Cost ${dollars(option.outlayUsd)}${range ? ` (one in ten under ${dollars(range.p10)}, one in ten over ${dollars(range.p90)}; from the ${option.outlayBasis})` : ''}.`;
  if (!award) return `${whole} No grant is awarded for it, so all of it is yours to pay.`;
  const paid = award.milestones.find((m) => m.kind === 'PAID')?.dueOn;
  const left = range && {
    p10: Math.max(0, range.p10 - award.grantCapUsd),
    p90: Math.max(0, range.p90 - award.grantCapUsd),
  };
  return `${whole} Grant: ${String(Math.round(1000 * award.grantShare) / 10)} % of the eligible cost, at most ${dollars(award.grantCapUsd, 6)}${paid ? `, due by ${paid}` : ''}; you pay the whole first${left ? `, and ${fromTo(left)} stays yours` : ''}.`;
}
