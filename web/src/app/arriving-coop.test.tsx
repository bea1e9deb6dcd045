import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { act, cleanup, render } from '@testing-library/react';
import { RouterProvider } from 'react-router';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { coopBase, coopHeaders, openCoop, readAddress } from '../lib/graphql/chosen-coop.ts';
import { UnitsProvider } from '../lib/units/units-context.tsx';
import { arrive, thingOf } from './arriving-coop.ts';
import { pages, routerFor } from './router.tsx';

const own = { id: 'co_1', name: 'Own growers', isChosen: true };
const demo = { id: 'demo', name: 'Example growers', isChosen: false };
const keeper: Record<string, typeof own> = { h_own: own, h_demo: demo };
const server = (id: string) => Promise.resolve({ coops: [own, demo], coopOf: keeper[id.split('~')[0]!] ?? null });
const at = (address: string) => arrive(new URL(address, 'http://localhost:5080'), server);

beforeEach(() => localStorage.clear());

describe('the co-op an address opens', () => {
  it('is the one it names, whatever was open before', async () => {
    localStorage.setItem('coop', 'co_1');
    expect(await at('/co-op/demo/fuel/prices?fuel=PROPANE#top')).toEqual({
      coopId: 'demo',
      address: '/co-op/demo/fuel/prices?fuel=PROPANE#top',
    });
  });
  it('is the last one, or the first, where an old address names none', async () => {
    expect(await at('/funding')).toEqual({ coopId: 'co_1', address: '/co-op/co_1/funding' });
    localStorage.setItem('coop', 'demo');
    expect(await at('/funding')).toEqual({ coopId: 'demo', address: '/co-op/demo/funding' });
    localStorage.setItem('coop', 'gone');
    expect(await at('/')).toEqual({ coopId: 'co_1', address: '/co-op/co_1/' });
  });
  it('goes on being taken from ?coop= as old links said it', async () => {
    expect(await at('/studies?coop=demo&left=s1')).toEqual({ coopId: 'demo', address: '/co-op/demo/studies?left=s1' });
  });
  it('is the one that keeps the house, and says so where another one was expected', async () => {
    expect(await at('/co-op/co_1/houses/h_own')).toEqual({ coopId: 'co_1', address: '/co-op/co_1/houses/h_own' });
    const wrong = await at('/co-op/co_1/options/h_demo~foam-now?x=1');
    expect(wrong.coopId).toBe('demo');
    expect(wrong.address).toBe('/co-op/demo/options/h_demo~foam-now?x=1');
    expect(wrong.notice).toBe('This option is kept by Example growers, so that co-op is open now, not Own growers.');
    const old = await at('/houses/h_demo');
    expect([old.coopId, old.notice]).toEqual([
      'demo',
      'This house is kept by Example growers, so that co-op is open now, not Own growers.',
    ]);
    const gone = await at('/co-op/co_gone/houses/h_demo');
    expect(gone.notice).toBe('This house is kept by Example growers, so that co-op is open now.');
  });
  it('is told to be missing where it is not here', async () => {
    expect(await at('/co-op/co_gone/farms')).toEqual({ missing: 'co_gone', address: '/co-op/co_gone/farms' });
    expect(await at('/farms?coop=co_gone')).toEqual({ missing: 'co_gone', address: '/farms?coop=co_gone' });
  });
});

it('reads addresses as they may be typed', () => {
  expect(readAddress('/co-op/demo')).toEqual({ coopId: 'demo', path: '/' });
  expect(readAddress('/co-op/a%20b/houses/new')).toEqual({ coopId: 'a b', path: '/houses/new' });
  expect(readAddress('/co-ops')).toEqual({ path: '/co-ops' });
  expect(readAddress('/co-op/%E0%A4%A/farms')).toEqual({ path: '/co-op/%E0%A4%A/farms' });
  expect(readAddress('/co-op/')).toEqual({ path: '/co-op/' });
  expect(thingOf('/houses/new')).toBeUndefined();
  expect(thingOf('/fuel/prices')).toBeUndefined();
  expect(thingOf('/supplies/sg_1')).toEqual({ id: 'sg_1', word: 'tank or meter' });
});

describe('within a co-op', () => {
  afterEach(cleanup);
  it('every link of the frame and every request carries it, and the notice goes with the page', async () => {
    localStorage.setItem('theme', 'light');
    openCoop('demo');
    expect(coopHeaders()).toEqual({ 'Farm-Coop': 'demo' });
    expect(localStorage.getItem('coop')).toBe('demo');
    window.history.replaceState(null, '', '/co-op/demo/nowhere-yet');
    const router = routerFor(coopBase('demo'), 'This house is kept by Example growers.');
    const { container, findByRole, getByText, queryByText } = render(
      <QueryClientProvider client={new QueryClient({ defaultOptions: { queries: { enabled: false } } })}>
        <UnitsProvider>
          <RouterProvider router={router} />
        </UnitsProvider>
      </QueryClientProvider>,
    );
    const nav = await findByRole('navigation');
    const inner = [...nav.querySelectorAll('a')].map((a) => a.getAttribute('href'));
    expect(inner).toHaveLength(pages.length);
    expect(inner.every((h) => h === '/co-op/demo' || h?.startsWith('/co-op/demo/'))).toBe(true);
    expect(
      [...container.querySelectorAll('a')]
        .filter((a) => !a.getAttribute('href')?.startsWith('/co-op/demo'))
        .map((a) => a.getAttribute('href')),
    ).toEqual(['#main']);
    getByText('This house is kept by Example growers.');
    await act(() => router.navigate('/also-nowhere'));
    expect(window.location.pathname).toBe('/co-op/demo/also-nowhere');
    expect(queryByText('This house is kept by Example growers.')).toBeNull();
  });
});
