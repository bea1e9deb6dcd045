import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { useState } from 'react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { ask } from '../../lib/graphql/client.ts';
import { HouseFinder } from './house-finder.tsx';

vi.mock('../../lib/graphql/client.ts', () => ({ ask: vi.fn() }));

const all = Array.from({ length: 1000 }, (_, i) => ({
  id: `h${String(i)}`,
  name: `house ${String(i % 4)}`,
  farm: { name: `Farm ${String(Math.floor(i / 4)).padStart(3, '0')}` },
}));

afterEach(cleanup);
beforeEach(() => {
  vi.mocked(ask).mockImplementation(((document: unknown, variables: { text?: string | null; id?: string }) => {
    if (String(document).includes('query NamedHouse')) return Promise.resolve({ house: all.find((h) => h.id === variables.id) });
    const fits = all.filter((h) => `${h.farm.name} ${h.name}`.toLowerCase().includes((variables.text ?? '').toLowerCase()));
    return Promise.resolve({ coop: { houses: { total: fits.length, items: fits.slice(0, 50) } } });
  }) as typeof ask);
});

function Held({ first }: { first: string }) {
  const [id, set] = useState(first);
  return (
    <QueryClientProvider client={new QueryClient({ defaultOptions: { queries: { retry: false } } })}>
      <HouseFinder label="house" value={id} change={set} />
    </QueryClientProvider>
  );
}

it('finds the last of a thousand houses by typing, and Enter takes the first that fits', async () => {
  render(<Held first="" />);
  expect(await screen.findByText('50 of the 1,000 that fit; type more of the name.')).toBeTruthy();
  const search = screen.getByLabelText('find a house by farm or name');
  fireEvent.change(search, { target: { value: 'farm 249 house 3' } });
  await screen.findByRole('option', { name: 'Farm 249, house 3' });
  await waitFor(() => expect(screen.queryByRole('option', { name: 'Farm 000, house 0' })).toBeNull());
  fireEvent.keyDown(search, { key: 'Enter' });
  expect(screen.getByLabelText<HTMLSelectElement>('house').value).toBe('h999');
  expect(screen.queryByText(/type more of the name/)).toBeNull();
});

it('keeps the house chosen while the list shows others, and says when none fits', async () => {
  render(<Held first="h900" />);
  expect(await screen.findByRole('option', { name: 'Farm 225, house 0' })).toBeTruthy();
  fireEvent.change(screen.getByLabelText('find a house by farm or name'), { target: { value: 'no such' } });
  expect(await screen.findByText('No house has that in its name.')).toBeTruthy();
  expect(screen.getByLabelText<HTMLSelectElement>('house').value).toBe('h900');
});

it('takes no house of the list before while the one typed for is still awaited', async () => {
  render(<Held first="" />);
  await screen.findByRole('option', { name: 'Farm 000, house 0' });
  vi.mocked(ask).mockImplementation((() => new Promise(() => undefined)) as typeof ask);
  const search = screen.getByLabelText('find a house by farm or name');
  fireEvent.change(search, { target: { value: 'farm 249' } });
  await waitFor(() => expect(vi.mocked(ask).mock.lastCall?.[1]).toEqual({ text: 'farm 249' }), { timeout: 15_000 });
  fireEvent.keyDown(search, { key: 'Enter' });
  expect(screen.getByLabelText<HTMLSelectElement>('house').value).toBe('');
});
