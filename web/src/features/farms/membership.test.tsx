import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { useState } from 'react';
import { MemoryRouter } from 'react-router';
import { afterEach, describe, expect, it } from 'vitest';
import { FarmMembership } from './farm-membership.tsx';
import { MembershipFields, membershipInput, membershipTyped } from './membership-fields.tsx';

afterEach(cleanup);

const farm = {
  name: 'Marsh End',
  relatedKey: 'river',
  relatedFarms: [],
  memberSinceOn: '2019-05-01',
  groups: ['under $100,000 of sales', 'new farmers'],
};

function Held() {
  const [typed, set] = useState(membershipTyped(farm));
  return (
    <>
      <MembershipFields
        typed={typed}
        set={set}
        keys={['river', 'hill']}
        groups={['New farmers', 'organic']}
        faults={[{ field: 'memberSinceOn', message: '2099-01-01 is still to come.', remedy: 'Give the day it joined.' }]}
      />
      <output>{JSON.stringify(membershipInput(typed))}</output>
    </>
  );
}

const sent = () => JSON.parse(screen.getByRole('status').textContent) as unknown;

describe('what rounds ask of a farm, in its form', () => {
  it('sends back what the farm has, groups with commas in them whole', () => {
    render(<Held />);
    expect(sent()).toEqual({ relatedKey: 'river', memberSinceOn: '2019-05-01', groups: farm.groups });
  });

  it('empties what is emptied, and adds a group that is in use but not claimed yet', () => {
    render(<Held />);
    fireEvent.change(screen.getByLabelText(/farms under one owner/), { target: { value: ' ' } });
    fireEvent.change(screen.getByLabelText(/member since/), { target: { value: '' } });
    expect(screen.queryByRole('button', { name: /New farmers/ })).toBeNull();
    fireEvent.click(screen.getByRole('button', { name: /organic/ }));
    expect(sent()).toEqual({ relatedKey: null, memberSinceOn: null, groups: [...farm.groups, 'organic'] });
    fireEvent.change(screen.getByLabelText(/groups it belongs to/), { target: { value: ' ; ' } });
    expect(sent()).toEqual({ relatedKey: null, memberSinceOn: null, groups: [] });
  });

  it('shows a fault at its field', () => {
    render(<Held />);
    expect(screen.getByLabelText(/member since/).getAttribute('aria-invalid')).toBe('true');
    expect(screen.getByText(/is still to come/)).toBeTruthy();
  });
});

describe('what rounds ask of a farm, on its page', () => {
  const shown = (part: Partial<Parameters<typeof FarmMembership>[0]['farm']>) => {
    render(
      <MemoryRouter>
        <FarmMembership farm={{ ...farm, ...part }} />
      </MemoryRouter>,
    );
    return screen.getAllByRole('listitem').map((i) => i.textContent);
  };

  it('names the farms that count as one with it, and leads to them', () => {
    const [owner, since, groups] = shown({
      relatedFarms: [
        { id: 'f2', name: 'Eddy Bank' },
        { id: 'f3', name: 'Mill Race' },
      ],
    });
    expect(owner).toContain('Under one owner with Eddy Bank and Mill Race: the cap of a farm holds for all of them together');
    expect(screen.getByRole('link', { name: 'Mill Race' }).getAttribute('href')).toBe('/farms/f3');
    expect(since).toContain('2019-05-01');
    expect(groups).toContain('under $100,000 of sales; new farmers');
  });

  it('says what follows where nothing is told', () => {
    const [owner, since, groups] = shown({ relatedKey: null, memberSinceOn: null, groups: [] });
    expect(owner).toContain('Stands alone');
    expect(since).toContain('leaves this farm out');
    expect(groups).toContain('does not reach this farm');
    cleanup();
    expect(shown({})[0]).toContain('No other farm has its word “river” yet');
  });
});
