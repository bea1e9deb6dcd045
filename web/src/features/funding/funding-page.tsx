import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { FanChart } from '../../components/charts/fan-chart.tsx';
import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { dollars, figure } from '../../lib/units/format.ts';
import { Funding, type Order } from './funding-query.ts';
import { outWords } from './houses-out.ts';
import { useRules } from './funding-rules.ts';
import { MeasuresTable } from './measures-table.tsx';
import { OrderWait } from '../../components/order-wait.tsx';
import { OrderTable } from './order-table.tsx';
import { RulesPanel } from './rules-panel.tsx';
import { useUnits } from '../../lib/units/units-context.tsx';
import { inSentence } from '../../lib/units/told.ts';

const OUT = 6;
const MORE_OUT = 20;
const MOST_OUT = 200;

export function FundingPage() {
  const rules = useRules();
  const [afterRank, setAfter] = useState(0);
  const [out, setOut] = useState(OUT);
  const { data, error } = useQuery({
    queryKey: ['funding', rules.input, rules.roundId, afterRank, out],
    queryFn: () => ask(Funding, { rules: rules.input, roundId: rules.roundId, afterRank, out }),
    placeholderData: (d) => d,
  });
  const order = data?.fundingOrder;
  const funded = order?.fundedTotal ?? 0;
  const others = order && outWords(order.rowTotal, order.housesOut);
  return (
    <>
      {order ? (
        <h1>
          {dollars(rules.value('budgetUsd'))} funds{' '}
          <b>
            {funded} of {order.rowTotal}
          </b>{' '}
          houses and saves members <b>{dollars(order.savingUsd.p50)}</b> a season in the middle of the futures{' '}
          <b>
            ({dollars(order.savingUsd.p10)} to {dollars(order.savingUsd.p90)})
          </b>
          ; the next $10,000 would add <b>{dollars(order.nextAddsUsd)}</b>.
        </h1>
      ) : (
        <h1>{error ? 'The order cannot be shown.' : data ? 'The order needs a study.' : 'Reading the order.'}</h1>
      )}
      {others && <p className="lead">{others}</p>}
      {error && <p className="fault">{error.message}</p>}
      {data && !order && <NoOrder />}
      {!data && !error && <OrderWait />}
      <div className="rules">
        <RulesPanel rules={rules} order={order ?? undefined} />
        {order && <OrderTable order={order} rules={rules} afterRank={afterRank} goTo={setAfter} />}
      </div>
      {order && (
        <>
          <div className="two">
            <Frontier order={order} />
            <WhyNot order={order} more={() => setOut(out + MORE_OUT)} />
          </div>
          <MeasuresTable order={order} />
          <p className="small quiet">
            Picked on one half of the futures, the round promises {dollars(order.promisedUsd)} a season in the mean; the other half, which
            had no say in the choice, finds {dollars(order.foundUsd)}
            {Math.abs(order.foundUsd / order.promisedUsd - 1) < 0.02
              ? ': picking the best does not flatter it.'
              : ': believe the second figure.'}
          </p>
        </>
      )}
    </>
  );
}

const StudyAtAll = graphql(`
  query StudyAtAll {
    coop {
      newestStudy {
        number
      }
      houseCount
    }
  }
`);

/** Why there is no order: no house, no study yet, or one that the inputs have left behind. */
function NoOrder() {
  const { data } = useQuery({ queryKey: ['study-at-all'], queryFn: () => ask(StudyAtAll) });
  if (!data) return null;
  const { newestStudy, houseCount } = data.coop;
  return (
    <p className="lead">
      {newestStudy
        ? `Something changed since study ${String(newestStudy.number)}: run one by the line above.`
        : houseCount === 0
          ? 'No study yet: there is no house to run one for. Add the first.'
          : 'No study yet: run the first by the line above.'}
    </p>
  );
}

function Frontier({ order }: { order: Order }) {
  return (
    <section>
      <ChartFrame
        title="What more money would buy"
        caption="Saving of all members a season against grant money given, best order for each sum."
        table={{
          heads: [
            'grant money, $',
            'one in ten under, $',
            'one in four under, $',
            'middle, $',
            'one in four over, $',
            'one in ten over, $',
          ],
          rows: order.frontier.map((f) => [
            figure(f.grantUsd),
            figure(f.savingP10),
            figure(f.savingP25),
            figure(f.savingP50),
            figure(f.savingP75),
            figure(f.savingP90),
          ]),
        }}
      >
        <FanChart
          points={order.frontier.map((f) => ({
            name: dollars(f.grantUsd, 2),
            at: f.grantUsd,
            p10: f.savingP10,
            p25: f.savingP25,
            p50: f.savingP50,
            p75: f.savingP75,
            p90: f.savingP90,
          }))}
          upright={{ at: order.grantUsd, name: `this round, ${dollars(order.grantUsd)}` }}
          axis="grant money given"
          format={(v) => dollars(v)}
        />
      </ChartFrame>
    </section>
  );
}

function WhyNot({ order, more }: { order: Order; more: () => void }) {
  const { say } = useUnits();
  const left = order.notEligibleTotal - order.notEligible.length;
  return (
    <section>
      <h2>Why not these</h2>
      <p className="caption">The next below the line, and those that a rule keeps out.</p>
      {order.below.map((r) => (
        <p key={r.option.id}>
          <b>
            {r.option.house.farm.name}, {r.option.house.name}
          </b>{' '}
          {r.why}.
        </p>
      ))}
      {order.notEligible.map((n) => (
        <p key={n.option.id}>
          <b>
            {n.option.house.farm.name}, {n.option.house.name}
          </b>
          , {inSentence(say(n.option.title))}: {n.why}.
        </p>
      ))}
      {left > 0 && (
        <p className="below">
          {order.notEligible.length < MOST_OUT ? (
            <button className="link" onClick={more}>
              {Math.min(MORE_OUT, left)} more of the {order.notEligibleTotal} that a rule keeps out
            </button>
          ) : (
            `and ${String(left)} more, each worth less`
          )}
        </p>
      )}
    </section>
  );
}
