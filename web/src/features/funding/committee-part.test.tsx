import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { ask } from '../../lib/graphql/client.ts';
import { CommitteePart } from './committee-part.tsx';
import type { Round } from './round-query.ts';

vi.mock('../../lib/graphql/client.ts', () => ({ ask: vi.fn(), requestId: () => 'r' }));

const farms = Array.from({ length: 301 }, (_, i) => ({ id: `f${String(i)}`, name: `Farm ${String(i).padStart(3, '0')}` }));
const sent: unknown[] = [];

afterEach(cleanup);
beforeEach(() => {
  sent.length = 0;
  vi.mocked(ask).mockImplementation(((document: unknown, variables: { text?: string | null; input?: unknown }) => {
    if (String(document).includes('mutation SaveRound')) {
      sent.push(variables.input);
      return Promise.resolve({ saveRound: { changeId: 'c', conflict: false, faults: [] } });
    }
    const fits = farms.filter((f) => f.name.toLowerCase().includes((variables.text ?? '').toLowerCase()));
    return Promise.resolve({ coop: { farms: { total: fits.length, items: fits.slice(0, 50) } } });
  }) as typeof ask);
});

const round = {
  id: 'fo1',
  revision: 3,
  name: 'Fall',
  state: 'OPEN',
  quorum: 2,
  committee: [
    { key: 'm1', name: 'the chair', present: true, vote: 'FOR', interests: [{ farmId: 'f250', farm: 'Farm 250', relation: 'kin' }] },
  ],
} as unknown as Round;

it('names an interest in a farm that no list of two hundred holds, and keeps those that stand', async () => {
  render(
    <QueryClientProvider client={new QueryClient({ defaultOptions: { queries: { retry: false } } })}>
      <CommitteePart round={round} />
    </QueryClientProvider>,
  );
  fireEvent.click(screen.getByRole('button', { name: /enter who decides/ }));
  expect(screen.getByLabelText<HTMLInputElement>('relation of the chair to Farm 250').value).toBe('kin');
  const search = screen.getByLabelText(/find a farm by name or place/);
  fireEvent.change(search, { target: { value: 'Farm 300' } });
  await screen.findByRole('option', { name: 'Farm 300' });
  await waitFor(() => expect(screen.queryByRole('option', { name: 'Farm 000' })).toBeNull());
  fireEvent.keyDown(search, { key: 'Enter' });
  expect(screen.getByLabelText<HTMLInputElement>('relation of the chair to Farm 300').value).toBe('owner');
  fireEvent.change(screen.getByLabelText('interest in of the chair'), { target: { value: 'supplier' } });
  expect(screen.getByText(/takes nobody out of a vote by itself/)).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Save the committee' }));
  await waitFor(() => expect(sent).toHaveLength(1));
  expect((sent[0] as { committee: unknown }).committee).toEqual([
    {
      name: 'the chair',
      present: true,
      vote: 'FOR',
      interests: [
        { farmId: 'f250', relation: 'kin' },
        { farmId: 'f300', relation: 'owner' },
        { farmId: null, relation: 'owner' },
      ],
    },
  ]);
});
