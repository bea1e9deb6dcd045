import { render, screen } from '@testing-library/react';
import { MemoryRouter } from 'react-router';
import { expect, it } from 'vitest';
import { Crumbs } from './crumbs.tsx';
import { usePageName } from './page-name.ts';

function Page({ house, farm }: { house?: string; farm?: string }) {
  usePageName(house, farm);
  return null;
}

it('names the document after house and farm once both are known, and keeps the general name before', () => {
  document.title = 'House - FarmPortfolio';
  const { rerender } = render(<Page />);
  expect(document.title).toBe('House - FarmPortfolio');
  rerender(<Page house="house 1" farm="Alder Reach" />);
  expect(document.title).toBe('house 1, Alder Reach - FarmPortfolio');
});

it('leads from an option to its house, its farm and all farms', () => {
  render(
    <MemoryRouter>
      <Crumbs
        above={[
          ['/farms', 'Farms'],
          ['/farms/f1', 'Alder Reach'],
          ['/houses/h1', 'house 1'],
        ]}
        here="Night curtain"
      />
    </MemoryRouter>,
  );
  expect(screen.getAllByRole('link').map((l) => l.getAttribute('href'))).toEqual(['/farms', '/farms/f1', '/houses/h1']);
  expect(screen.getByText('Night curtain').getAttribute('aria-current')).toBe('page');
});
