import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { cleanup, fireEvent, render, screen, within, waitFor } from '@testing-library/react';
import { MemoryRouter } from 'react-router';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { ask } from '../../lib/graphql/client.ts';
import { PricesPage } from './prices-page.tsx';

vi.mock('../../lib/graphql/client.ts', () => ({ ask: vi.fn(), requestId: () => 'r' }));

const cases = [
  ['SPIKE_OF_TWO_WINTERS', 'A spike of two winters', [1.5, 1.5, 1]],
  ['COLLAPSE', 'A collapse', [0.6, 0.6, 0.6]],
] as const;
const coop = {
  scenarioSet: { id: 's', revision: 3, firstSeason: 2026, seasonCount: 3, levelMeaning: 'MIDDLE', priceCase: null },
  priceCases: cases.map(([kind, title, bySeason]) => ({
    kind,
    title,
    words: 'What it does.',
    source: 'where from',
    inUse: false,
    factors: [
      { fuel: 'NATURAL_GAS', bySeason },
      { fuel: 'PROPANE', bySeason },
    ],
  })),
  houses: { total: 1, items: [{ id: 'h', name: 'house 1', farm: { name: 'Farm' } }] },
  priceCorrelations: {
    shortTerm: Array.from({ length: 16 }, (_, i) => (i % 5 === 0 ? 1 : 0.4)),
    longTerm: Array.from({ length: 16 }, (_, i) => (i % 5 === 0 ? 1 : 0.5)),
    isOwn: false,
    usualShortTerm: Array.from({ length: 16 }, () => 0.4),
    usualLongTerm: Array.from({ length: 16 }, () => 0.5),
    fittedShortTerm: Array.from({ length: 16 }, () => 0.45),
    fittedLongTerm: Array.from({ length: 16 }, () => 0.55),
    sharedMonths: Array.from({ length: 16 }, () => 321),
  },
};
const model = (key: string, name: string) => ({
  key,
  name,
  halfLifeMonths: 12,
  volatilityPerYear: 0.4,
  shortVolatility: 0.3,
  longVolatility: 0.28,
  outlook: [1, 5, 15].map((years) => ({ years, p10: 0.5, middle: 0.8, mean: 1, p90: 1.6 })),
});
const knob = {
  field: 'volatilityPerYear',
  title: 'yearly volatility (ss)',
  unit: '1',
  own: null,
  usual: 0.4,
  low: 0,
  high: 2,
  words: 'widens every band',
};
const end = (paybackSeason: number | null, npvUsd: number) => ({ paybackSeason, npvUsd, neverShare: paybackSeason ? 0.1 : 0.6 });
const answers: [match: RegExp, answer: (variables: Record<string, unknown>) => unknown][] = [
  [/query Prices\(/, () => ({ coop })],
  [/query FoundHouses/, () => ({ coop })],
  [/query PriceCorrelations/, () => ({ coop })],
  [
    /query HouseOptions/,
    () => ({
      house: { id: 'h', name: 'house 1', fuel: 'PROPANE', farm: { name: 'Farm' }, options: [{ id: 'h~foam', key: 'foam', title: 'Foam' }] },
    }),
  ],
  [
    /query CaseEffects/,
    () => ({
      option: {
        id: 'h~foam',
        priceCaseEffects: {
          base: end(6, 5000),
          cases: [
            { kind: 'SPIKE_OF_TWO_WINTERS', end: end(4, 7000) },
            { kind: 'COLLAPSE', end: end(null, -2000) },
          ],
        },
      },
    }),
  ],
  [
    /query PriceSettings/,
    (v) => ({
      priceSettings: {
        fuel: 'PROPANE',
        seriesName: 'record',
        unit: 'gal',
        lastMonth: '2023-09',
        levelMeaning: 'MIDDLE',
        knobs: [knob],
        models: [model('now', 'in use'), ...(v['trial'] ? [model('tried', 'as typed')] : [])],
        freeFit: null,
        faults: [],
      },
    }),
  ],
  [/query PriceTrial/, () => ({ option: { id: 'h~foam', priceTrial: { now: end(6, 5000), tried: end(7, 4000) } } })],
  [/mutation ChoosePriceCase/, () => ({ choosePriceCase: { changeId: 'c', conflict: false, faults: [] } })],
];

afterEach(cleanup);
beforeEach(() => {
  vi.mocked(ask).mockReset();
  vi.mocked(ask).mockImplementation(((document: unknown, variables: Record<string, unknown> = {}) =>
    Promise.resolve(answers.find(([match]) => match.test(String(document)))?.[1](variables))) as typeof ask);
});

const open = () =>
  render(
    <QueryClientProvider client={new QueryClient({ defaultOptions: { queries: { retry: false } } })}>
      <MemoryRouter>
        <PricesPage />
      </MemoryRouter>
    </QueryClientProvider>,
  );

it('answers with the payback now, in a collapse and after a spike', async () => {
  open();
  const heading = await screen.findByRole('heading', { level: 1, name: /Foam is paid back by season 6 in half/ });
  expect(heading.textContent).toContain('should prices collapse, never; after a spike of two winters, by season 4');
});

it('shows what each case lays on prices and lays one over the futures', async () => {
  open();
  expect(await screen.findByRole('img', { name: /A collapse: natural gas, propane times 0.60 in 3 of 3 seasons/i })).toBeTruthy();
  const row = (await screen.findByText('A collapse')).closest('tr');
  if (!row) throw new Error('no row');
  await within(row).findByText('never');
  expect(row.textContent).toContain('$7,000 less');
  fireEvent.click(within(row).getByRole('button', { name: /lay over the futures/ }));
  await waitFor(() =>
    expect(vi.mocked(ask).mock.calls.find(([d]) => String(d).includes('mutation ChoosePriceCase'))?.[1]).toEqual({
      input: { setId: 's', expectedRevision: 3, requestId: 'r', kind: 'COLLAPSE', firstSeason: 0 },
    }),
  );
});

it('tries what is typed on the band and the payback before anything is saved', async () => {
  open();
  fireEvent.change(await screen.findByLabelText('yearly volatility (ss), % a year'), { target: { value: '60' } });
  expect(await screen.findByText(/As typed, the option is paid back by season 7/)).toBeTruthy();
  expect(await screen.findByText('as typed')).toBeTruthy();
  const trial = vi.mocked(ask).mock.calls.find(([d]) => String(d).includes('query PriceTrial'))?.[1] as { trial: Record<string, unknown> };
  expect(trial.trial['volatilityPerYear']).toBe(0.6);
  expect(vi.mocked(ask).mock.calls.some(([d]) => String(d).includes('mutation'))).toBe(false);
});
