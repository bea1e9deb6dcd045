import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { SwingBars } from '../../components/charts/swing-bars.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { dollars, figure, inDegrees } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { MovesQuery } from './option-query.ts';

const back = (season: number | null | undefined) => (season == null ? 'never' : `season ${String(season)}`);
const by = (season: number | null | undefined) => (season == null ? 'in no season' : `by season ${String(season)}`);

/** What moves the option most: one input at a time at its one-in-ten ends, run by the engine on the study's own inputs. */
export function OptionMoves({ optionId, hasOutlay }: { optionId: string; hasOutlay: boolean }) {
  const { units } = useUnits();
  const { data, error } = useQuery({
    queryKey: ['option-moves', optionId],
    queryFn: () => ask(MovesQuery, { id: optionId }),
    staleTime: Infinity,
  });
  const s = data?.option?.sensitivity;
  if (error || !s) {
    return (
      <section>
        <h2>What moves it most</h2>
        <p className={error ? 'fault' : 'caption'} role="status">
          {error ? error.message : data ? 'It needs a study by this version of the program.' : 'Running the house with each input moved.'}
        </p>
      </section>
    );
  }
  const widest = s.bars[0];
  const payback = (season: number | null | undefined) => (hasOutlay ? back(season) : '');
  return (
    <section>
      <ChartFrame
        title="What moves it most"
        caption={`Net worth over the horizon, middle future. Green: as assumed, ${dollars(s.base.npvUsd)}. Each bar moves one input to what one in ten is under and over; pale for the worse, dark for the better.`}
        table={{
          heads: ['input', 'one in ten under', 'net worth, $', 'paid back by', 'one in ten over', 'net worth, $ ', 'paid back by '],
          rows: s.bars.map((b) => [
            b.title,
            inDegrees(b.low.words, units),
            figure(b.low.npvUsd),
            payback(b.low.paybackSeason),
            inDegrees(b.high.words, units),
            figure(b.high.npvUsd),
            payback(b.high.paybackSeason),
          ]),
        }}
      >
        <SwingBars
          base={s.base.npvUsd}
          bars={s.bars.map((b) => ({
            field: b.field,
            title: b.title,
            low: { words: inDegrees(b.low.words, units), value: b.low.npvUsd },
            high: { words: inDegrees(b.high.words, units), value: b.high.npvUsd },
          }))}
          format={(v) => dollars(v)}
          label={`Net worth with one input moved; the widest: ${s.bars
            .slice(0, 3)
            .map((b) => `${b.title}, ${dollars(b.low.npvUsd)} to ${dollars(b.high.npvUsd)}`)
            .join('; ')}`}
        />
      </ChartFrame>
      {widest && hasOutlay && (
        <p className="small quiet">
          Most of all: {widest.title.toLowerCase()}. In half the futures it is paid back {by(widest.low.paybackSeason)} at{' '}
          {inDegrees(widest.low.words, units)}, {by(widest.high.paybackSeason)} at {inDegrees(widest.high.words, units)},{' '}
          {by(s.base.paybackSeason)} as assumed. Reckoned with 512 futures of the same kind as the study&apos;s.{' '}
          <Link to={`/fuel/prices?option=${encodeURIComponent(optionId)}`}>Under named price cases</Link>.
        </p>
      )}
    </section>
  );
}
