import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { ask } from '../../lib/graphql/client.ts';
import { FarmFinder } from './farm-finder.tsx';

vi.mock('../../lib/graphql/client.ts', () => ({ ask: vi.fn() }));

const all = Array.from({ length: 1000 }, (_, i) => ({ id: `f${String(i)}`, name: `Farm ${String(i).padStart(3, '0')}` }));

afterEach(cleanup);
beforeEach(() => {
  vi.mocked(ask).mockImplementation(((_: unknown, variables: { text?: string | null }) => {
    const fits = all.filter((f) => f.name.toLowerCase().includes((variables.text ?? '').toLowerCase()));
    return Promise.resolve({ coop: { farms: { total: fits.length, items: fits.slice(0, 50) } } });
  }) as typeof ask);
});

function drawn() {
  const choose = vi.fn();
  render(
    <QueryClientProvider client={new QueryClient({ defaultOptions: { queries: { retry: false } } })}>
      <FarmFinder label="interest in" none="none declared" others={[['supplier', 'a supplier']]} whose="the chair" choose={choose} />
    </QueryClientProvider>,
  );
  return {
    choose,
    search: screen.getByLabelText<HTMLInputElement>(/find a farm by name or place/),
    list: screen.getByLabelText<HTMLSelectElement>('interest in of the chair'),
  };
}

it('finds the last of a thousand farms by typing, and Enter takes the first that fits', async () => {
  const { choose, search } = drawn();
  expect(await screen.findByText('50 of the 1,000 that fit; type more of the name.')).toBeTruthy();
  expect(screen.queryByRole('option', { name: 'Farm 999' })).toBeNull();
  fireEvent.change(search, { target: { value: 'farm 999' } });
  await screen.findByRole('option', { name: 'Farm 999' });
  await waitFor(() => expect(screen.queryByRole('option', { name: 'Farm 000' })).toBeNull());
  fireEvent.keyDown(search, { key: 'Enter' });
  expect(choose.mock.calls).toEqual([['f999', 'Farm 999']]);
  expect(search.value).toBe('');
});

it('chooses from the list, and what may stand beside farms; Enter with nothing typed chooses nothing', async () => {
  const { choose, search, list } = drawn();
  await screen.findByRole('option', { name: 'Farm 007' });
  fireEvent.keyDown(search, { key: 'Enter' });
  expect(choose).not.toHaveBeenCalled();
  fireEvent.change(list, { target: { value: 'f7' } });
  fireEvent.change(list, { target: { value: 'supplier' } });
  expect(choose.mock.calls).toEqual([
    ['f7', 'Farm 007'],
    ['supplier', 'a supplier'],
  ]);
});

it('says when none fits', async () => {
  const { search } = drawn();
  fireEvent.change(search, { target: { value: 'no such' } });
  expect(await screen.findByText('No farm has that in its name or place.')).toBeTruthy();
});
