import { useQuery } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { ask } from '../../lib/graphql/client.ts';
import { counted, dollars, fuelName, heat, heatUnit, ofHundred } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { Field } from '../../components/forms/field.tsx';
import { readNumber } from '../../lib/units/typed-number.ts';
import { ExposureTail } from './exposure-tail.tsx';
import { ExposureWays, type Way } from './exposure-ways.tsx';
import { ExposureQuery } from './fuel-queries.ts';

const CASH = { least: 0, most: 1e9, such: '30000' };
const because = { PRICE: 'the price', WINTER: 'the winter', BOTH: 'price and winter together' } as const;

/** What one farm's heating can cost, from the page's heading on: the same heat on every fuel and contract, what makes a season dear, and what takes it off. */
export function ExposurePart({ farmId, prices, choose }: { farmId: string; prices: ReactNode; choose: ReactNode }) {
  const { units, say } = useUnits();
  const [season, setSeason] = useState(0);
  const [typed, setTyped] = useState('');
  const [told, setTold] = useState('');
  const cashUsd = readNumber(told, CASH).fault === undefined ? readNumber(told, CASH).value : null;
  const { data, error } = useQuery({
    queryKey: ['exposure', farmId, season, cashUsd],
    queryFn: () => ask(ExposureQuery, { farmId, season, cashUsd }),
    placeholderData: (d) => d,
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <h1>Settling the season on every future.</h1>;
  const e = data.exposure;
  const own = e?.ways.find((w) => w.isOwn);
  if (!e || !own)
    return (
      <>
        <h1>This farm&apos;s heat cannot be reckoned yet: it needs a house, a weather station with winters, and prices.</h1>
        <p className="lead">{prices}</p>
        {choose}
      </>
    );
  const bills = data.farm?.bills ?? [];
  const known = {
    usd: season === 0 && bills.length === 1 ? bills[0]?.usd : undefined,
    grades: data.farm?.houses.map((h) => h.dataGrade) ?? [],
  };
  const most = Math.max(...e.ways.map((w) => w.costUsd.p95)) * 1.05;
  const cheapest = e.ways
    .filter((w) => w.fuel !== own.fuel && w.fuel !== 'WOOD_PELLETS')
    .reduce<Way | undefined>((a, w) => (a && a.costUsd.p90 <= w.costUsd.p90 ? a : w), undefined);
  return (
    <>
      <h1>
        On {fuelName[own.fuel]}, one winter in ten costs {e.name} over <b>{dollars(own.costUsd.p90)}</b>
        {cheapest && (
          <>
            ; the same heat on {say(cheapest.name.replace(', on its index', ''))} would be over <b>{dollars(cheapest.costUsd.p90)}</b>
          </>
        )}
        .
      </h1>
      <p className="lead">
        The middle season costs <b>{dollars(own.costUsd.p50)}</b> for {heat(e.heatKwh.p50, units)} {heatUnit(units)} of heat. {prices}
      </p>
      {choose}
      <p className="switches" role="group" aria-label="season">
        {[0, 1, 2, 4].map((s) => (
          <button key={s} aria-pressed={s === season} onClick={() => setSeason(s)}>
            {s === 0 ? 'next season' : `in ${counted(s + 1, 'season')}`}
          </button>
        ))}
      </p>
      {e.leftOut.map((l) => (
        <p className="fault" key={l}>
          {l}
        </p>
      ))}
      <ExposureWays e={e} own={own} most={most} known={known} />
      <section>
        <h2>What makes a season dear</h2>
        <p>
          Of the dearest twentieth, the price made {share(e.priceShare)} of 100, the winter {share(e.winterShare)}, both together{' '}
          {share(e.bothShare)}.
        </p>
        <ul>
          {e.dear.map((d, i) => (
            <li key={d.usd}>
              {['One in twenty', 'One in fifty', 'One in a hundred'][i]} costs {dollars(d.usd)} or more; for one such, {because[d.because]}{' '}
              did it: a winter like {d.winterName}, {signed(d.heatAgainstMiddlePct)} heat, and a price {signed(d.priceAgainstMiddlePct)} the
              middle one.
            </li>
          ))}
        </ul>
        <form
          className="form"
          onSubmit={(x) => {
            x.preventDefault();
            setTold(typed);
          }}
        >
          <Field
            label="cash set aside for a season's fuel, $"
            value={typed}
            change={setTyped}
            name="cashUsd"
            faults={[]}
            number={CASH}
            required
          />
          <button className="link">hold the season against it</button>
        </form>
        {e.cash && (
          <p>
            {dollars(e.cash.cashUsd)} is too little in <b>{ofHundred(e.cash.overShare)} of 100</b> futures, by{' '}
            {dollars(e.cash.meanShortUsd)} in the mean of those; in one of twenty {dollars(e.cash.shortOneInTwentyUsd)} or more is short.
          </p>
        )}
      </section>
      <ExposureTail e={e} own={own} />
    </>
  );
}

const share = (s: number) => (s > 0.995 && s < 1 ? 'over 99' : ofHundred(s));
const signed = (pct: number) => `${pct >= 0 ? `${String(Math.round(pct))} % over` : `${String(Math.round(-pct))} % under`}`;
