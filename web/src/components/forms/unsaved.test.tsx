import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { createMemoryRouter, Link, Outlet, RouterProvider } from 'react-router';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { useTyped } from './typed.ts';
import { UnsavedProvider, useUnsaved } from './unsaved.tsx';

beforeEach(() => {
  // jsdom has no modal dialogs
  HTMLDialogElement.prototype.showModal = function (this: HTMLDialogElement) {
    this.open = true;
  };
});
afterEach(cleanup);

function Form() {
  const { typed, set, changed } = useTyped(() => ({ name: 'house 1' }));
  const kept = useUnsaved(changed);
  return (
    <>
      <input aria-label="name" value={typed.name} onChange={(e) => set({ name: e.target.value })} />
      <button onClick={kept}>save</button>
      <Link to="/farms">farms</Link>
      <Link to="/?option=foam">another view</Link>
    </>
  );
}

const opened = () =>
  render(
    <RouterProvider
      router={createMemoryRouter([
        {
          path: '/',
          element: (
            <UnsavedProvider>
              <Outlet />
            </UnsavedProvider>
          ),
          children: [
            { index: true, element: <Form /> },
            { path: 'farms', element: <h1>Farms</h1> },
          ],
        },
      ])}
    />,
  );
const type = (value: string) => fireEvent.change(screen.getByLabelText('name'), { target: { value } });
/** Whether closing the tab would ask. */
const closing = () => !window.dispatchEvent(new Event('beforeunload', { cancelable: true }));

it('asks before a link leaves what was typed; staying keeps it, leaving gives it up', async () => {
  opened();
  type('house 2');
  expect(closing()).toBe(true);
  fireEvent.click(screen.getByText('farms'));
  expect(await screen.findByRole('alertdialog', { name: 'What you typed is not saved' })).toBeTruthy();
  fireEvent.click(screen.getByText('stay on the page'));
  await waitFor(() => expect(screen.queryByRole('alertdialog')).toBeNull());
  expect(screen.getByLabelText<HTMLInputElement>('name').value).toBe('house 2');
  fireEvent.click(screen.getByText('farms'));
  fireEvent.click(await screen.findByText('leave without saving'));
  expect(await screen.findByRole('heading', { name: 'Farms' })).toBeTruthy();
  expect(closing()).toBe(false);
});

it('takes Escape for staying', async () => {
  opened();
  type('house 2');
  fireEvent.click(screen.getByText('farms'));
  fireEvent(await screen.findByRole('alertdialog'), new Event('cancel', { cancelable: true }));
  await waitFor(() => expect(screen.queryByRole('alertdialog')).toBeNull());
  expect(screen.getByLabelText('name')).toBeTruthy();
});

it.each([
  ['nothing was typed', () => undefined],
  ['it was typed back', () => (type('house 2'), type('house 1'))],
  ['it was saved', () => (type('house 2'), fireEvent.click(screen.getByText('save')))],
])('never asks where %s', async (_, act) => {
  opened();
  act();
  expect(closing()).toBe(false);
  fireEvent.click(screen.getByText('farms'));
  expect(await screen.findByRole('heading', { name: 'Farms' })).toBeTruthy();
});

it('does not ask about another view of the same page, where the form stays', () => {
  opened();
  type('house 2');
  fireEvent.click(screen.getByText('another view'));
  expect(screen.queryByRole('alertdialog')).toBeNull();
  expect(screen.getByLabelText<HTMLInputElement>('name').value).toBe('house 2');
});
