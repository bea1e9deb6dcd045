import { fireEvent, render, screen } from '@testing-library/react';
import { afterEach, expect, it, vi } from 'vitest';
import { LedgerTable } from './ledger-table.tsx';

afterEach(() => vi.restoreAllMocks());

const table = (
  <LedgerTable name="a past season by month">
    <thead>
      <tr>
        <th>month</th>
        <th>index, $</th>
      </tr>
    </thead>
  </LedgerTable>
);

it('names its table, and is no stop of the keys where all of it is seen', () => {
  render(table);
  expect(screen.getByRole('table', { name: 'a past season by month' })).toBeTruthy();
  expect(screen.queryByRole('region')).toBeNull();
  expect(screen.queryByText(/Scrolls sideways/)).toBeNull();
});

it('says which columns are out of sight, until they are reached', () => {
  let at = 0;
  vi.spyOn(HTMLElement.prototype, 'scrollWidth', 'get').mockReturnValue(600);
  vi.spyOn(HTMLElement.prototype, 'clientWidth', 'get').mockReturnValue(300);
  vi.spyOn(Element.prototype, 'getBoundingClientRect').mockImplementation(function (this: Element) {
    const right = this.tagName === 'TH' ? (this.textContent === 'month' ? 100 : 600) - at : 300;
    return { right } as DOMRect;
  });
  render(table);
  const region = screen.getByRole('region', { name: 'a past season by month, scrolls sideways' });
  expect(region.tabIndex).toBe(0);
  expect(screen.getByText('Scrolls sideways. Still to the right: index, $.')).toBeTruthy();
  at = 300;
  fireEvent.scroll(region);
  expect(screen.getByText('Scrolls sideways. This is its right end.')).toBeTruthy();
});
