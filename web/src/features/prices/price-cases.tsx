import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { CaseEffectsQuery, PricesQuery as Answer } from '../../lib/graphql/generated/graphql.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { dollars, figure, ofHundred, type Fuel } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { FactorLine } from './factor-line.tsx';
import { paidBack, seasonName } from './price-words.ts';
import { CaseEffects, ChooseCase } from './prices-queries.ts';
import { NumberHead } from '../../components/number-head.tsx';

type Coop = Answer['coop'];
type Kind = Coop['priceCases'][number]['kind'];
type Effects = NonNullable<NonNullable<CaseEffectsQuery['option']>['priceCaseEffects']>;

export const useEffects = (optionId: string, firstSeason: number) =>
  useQuery({
    queryKey: ['case-effects', optionId, firstSeason],
    queryFn: () => ask(CaseEffects, { id: optionId, firstSeason }),
    enabled: optionId !== '',
    placeholderData: (d) => d,
  });

/** The named price cases, what each does to prices and to one option's payback, and which one studies take. */
export function PriceCases({
  coop,
  firstSeason,
  effects,
  waiting,
  begin,
}: {
  coop: Coop;
  firstSeason: number;
  effects?: Effects | null;
  waiting: boolean;
  begin: (season: number) => void;
}) {
  const queries = useQueryClient();
  const { say } = useUnits();
  const set = coop.scenarioSet;
  const choose = useMutation({
    mutationFn: (kind: Kind | null) =>
      ask(ChooseCase, {
        input: { setId: set?.id ?? '', expectedRevision: set?.revision ?? 0, requestId: requestId(), kind, firstSeason },
      }),
    onSuccess: () => queries.invalidateQueries(),
  });
  if (!set) return null;
  const end = new Map(effects?.cases.map((c) => [c.kind, c.end]));
  const inUse = set.priceCase;
  const answer = choose.data?.choosePriceCase;
  return (
    <section>
      <h2>Price cases</h2>
      <p className="caption">
        Certain courses, not drawn: every future keeps its own chance and is multiplied by the case. Half the futures have the option paid
        back by the season shown. A fixed contract is not moved while it runs; electricity and pellets never are.
      </p>
      <label style={{ maxWidth: 260 }}>
        <span>every case begins in season</span>
        <select value={firstSeason} onChange={(e) => begin(Number(e.target.value))}>
          {Array.from({ length: set.seasonCount }, (_, i) => (
            <option key={i} value={i}>
              {i + 1}: {seasonName(set.firstSeason + i)}
            </option>
          ))}
        </select>
      </label>
      {answer?.faults.map((f) => (
        <p key={f.message} className="fault" role="alert">
          {f.message} {f.remedy}
        </p>
      ))}
      {answer?.conflict && <p className="fault">Somebody changed the assumptions meanwhile; the page shows theirs now. Choose again.</p>}
      {choose.error && <p className="fault">{choose.error.message}</p>}
      <div className="scroll" role="region" aria-label="table of price cases, scrolls sideways" tabIndex={0}>
        <table className="stack">
          <caption className="hidden">price cases</caption>
          <thead>
            <tr>
              <th scope="col">case</th>
              <th scope="col">
                price, times,
                <br />
                by season
              </th>
              <NumberHead over="paid back" under="by" />
              <NumberHead over="never," under="of 100" />
              <NumberHead over="net worth" under="middle, $" />
              <th scope="col">studies</th>
            </tr>
          </thead>
          <tbody>
            <tr className={inUse ? undefined : 'chosen'}>
              <td>
                <b>No case</b>
                <span className="second">The futures as drawn.</span>
              </td>
              <td className="mark" />
              <Figures end={effects?.base} />
              <td className="note" style={{ whiteSpace: 'nowrap' }}>
                {inUse ? (
                  <button className="link" disabled={choose.isPending} onClick={() => choose.mutate(null)}>
                    take the case off
                  </button>
                ) : (
                  <span className="quiet">taken by studies</span>
                )}
              </td>
            </tr>
            {coop.priceCases.map((c) => {
              const used = c.inUse && inUse?.firstSeason === firstSeason;
              return (
                <tr key={c.kind} className={c.inUse ? 'chosen' : undefined}>
                  <td>
                    <b>{c.title}</b>
                    <span className="second">{say(`${c.words} ${c.source}.`)}</span>
                  </td>
                  <td className="mark">
                    <FactorLine factors={c.factors as { fuel: Fuel; bySeason: number[] }[]} label={c.title} />
                  </td>
                  <Figures end={end.get(c.kind)} base={effects?.base} />
                  <td className="note" style={{ whiteSpace: 'nowrap' }}>
                    {used ? (
                      <span className="quiet">taken by studies</span>
                    ) : (
                      <button className="link" disabled={choose.isPending} onClick={() => choose.mutate(c.kind)}>
                        {c.inUse ? `begin in ${seasonName(set.firstSeason + firstSeason)} instead` : 'lay over the futures'}
                        <span className="hidden">: {c.title}</span>
                      </button>
                    )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <p className="small quiet" role="status">
        {waiting
          ? 'Running the house under each case.'
          : effects
            ? `The house alone, 512 futures of the same kind as a study's, on the newest study's houses and the assumptions as they are now. A case chosen here marks the newest study out of date.`
            : 'Payback needs a done study with this option in it.'}
      </p>
    </section>
  );
}

function Figures({ end, base }: { end?: Effects['base']; base?: Effects['base'] }) {
  const more = end && base ? end.npvUsd - base.npvUsd : 0;
  return (
    <>
      <td className="n chief">{end ? paidBack(end.paybackSeason) : ''}</td>
      <td className="n" data-name="never, of 100">
        {end ? ofHundred(end.neverShare) : ''}
      </td>
      <td className="n" data-name="net worth, $">
        {end ? figure(end.npvUsd) : ''}
        {end && base && (
          <span className="second">{Math.abs(more) < 1 ? 'the same' : `${dollars(Math.abs(more), 2)} ${more > 0 ? 'more' : 'less'}`}</span>
        )}
      </td>
    </>
  );
}
