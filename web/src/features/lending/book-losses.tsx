import { useRef } from 'react';
import { ChartFrame } from '../../components/charts/chart-frame.tsx';
import { pushApart } from '../../components/charts/scale.ts';
import { useWidth } from '../../components/charts/use-width.ts';
import { dollars, ofHundred } from '../../lib/units/format.ts';
import type { Book } from './book-queries.ts';

const HEIGHT = 260;
const TOP = 56;
const BOTTOM = 40;

/** Losses of the book over the common futures; those without a loss are told, not drawn. */
export function BookLosses({ book }: { book: Book }) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, 560);
  const { lossCounts: counts, lossesToUsd: to, futuresCount, drawn } = book;
  const most = Math.max(1, ...counts);
  const [left, right] = [8, width - 12];
  const x = (usd: number) => left + (usd / to) * (right - left);
  const y = (count: number) => HEIGHT - BOTTOM - (count / most) * (HEIGHT - TOP - BOTTOM);
  const marks = [
    { at: drawn.meanUsd, words: `mean ${dollars(drawn.meanUsd)}` },
    { at: drawn.p95Usd, words: `one in 20 over ${dollars(drawn.p95Usd)}` },
    { at: drawn.p99Usd, words: `one in 100 over ${dollars(drawn.p99Usd)}` },
  ];
  const rows = pushApart(
    marks.map((_, i) => 12 + 16 * i),
    16,
    12,
    TOP,
  );
  const share = (i: number) => (counts[i] ?? 0) / futuresCount;
  return (
    <section>
      <ChartFrame
        title="What the book may lose"
        caption={`Losses over the whole term, of ${futuresCount.toLocaleString('en-US')} common futures; ${ofHundred(drawn.noLossShare)} of 100 lose nothing and are not drawn.`}
        table={{
          heads: ['loss from', 'to', 'of 100 futures'],
          rows: [
            ['0', '0', ofHundred(drawn.noLossShare)],
            ...counts.map((_, i) => [
              dollars((i * to) / counts.length),
              dollars(((i + 1) * to) / counts.length),
              (100 * share(i)).toFixed(2),
            ]),
          ],
        }}
      >
        <div ref={frame}>
          <svg
            width={width}
            height={HEIGHT}
            role="img"
            aria-label="losses of the book over the futures; the same numbers stand in the table below"
          >
            {counts.map((c, i) => (
              <rect
                key={i}
                x={x((i * to) / counts.length)}
                y={y(c)}
                width={Math.max(1, (right - left) / counts.length - 1)}
                height={HEIGHT - BOTTOM - y(c)}
                fill="var(--quiet)"
              />
            ))}
            <line x1={left} x2={right} y1={HEIGHT - BOTTOM} y2={HEIGHT - BOTTOM} stroke="var(--ink)" />
            {marks.map((m, i) => {
              const end = x(m.at) > width / 2;
              return (
                <g key={m.words}>
                  <line
                    x1={x(m.at)}
                    x2={x(m.at)}
                    y1={(rows[i] ?? 0) - 4}
                    y2={HEIGHT - BOTTOM}
                    stroke="var(--ink)"
                    strokeDasharray={i === 0 ? undefined : '3 3'}
                  />
                  <text x={x(m.at) + (end ? -6 : 6)} y={(rows[i] ?? 0) + 4} textAnchor={end ? 'end' : 'start'} className="strong">
                    {m.words}
                  </text>
                </g>
              );
            })}
            <text x={left} y={HEIGHT - BOTTOM + 18}>
              $0
            </text>
            <text x={x(to / 2)} y={HEIGHT - BOTTOM + 18} textAnchor="middle">
              {dollars(to / 2)}
            </text>
            <text x={right} y={HEIGHT - BOTTOM + 18} textAnchor="end">
              {dollars(to)}
            </text>
            <text x={right} y={HEIGHT - 4} textAnchor="end">
              loss of the book
            </text>
          </svg>
        </div>
      </ChartFrame>
    </section>
  );
}
