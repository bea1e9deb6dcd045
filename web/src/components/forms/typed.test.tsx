import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { fromMetres, toMetres } from '../../lib/units/format.ts';
import { turnedLength } from '../../lib/units/turned.ts';
import { UnitsProvider, useUnits } from '../../lib/units/units-context.tsx';
import { useTyped } from './typed.ts';

beforeEach(() => localStorage.clear());
afterEach(cleanup);

function Form() {
  const { units, setUnits } = useUnits();
  const { typed, set, changed } = useTyped(
    (u) => ({ width: fromMetres(8, u), length: '' }),
    (t, from, to) => ({ width: turnedLength(t.width, from, to), length: turnedLength(t.length, from, to) }),
  );
  return (
    <>
      <input aria-label="width" value={typed.width} onChange={(e) => set({ ...typed, width: e.target.value })} />
      <input aria-label="length" value={typed.length} onChange={(e) => set({ ...typed, length: e.target.value })} />
      <output>{`${String(changed)}, ${String(toMetres(typed.length, units)?.toFixed(3))}`}</output>
      <button onClick={() => setUnits(units === 'us' ? 'si' : 'us')}>switch</button>
    </>
  );
}
const value = (label: string) => screen.getByLabelText<HTMLInputElement>(label).value;
const type = (label: string, text: string) => fireEvent.change(screen.getByLabelText(label), { target: { value: text } });
const turn = () => fireEvent.click(screen.getByText('switch'));

it('turns what is typed with the units, and gives it back as it was typed', () => {
  render(
    <UnitsProvider>
      <Form />
    </UnitsProvider>,
  );
  expect([value('width'), screen.getByRole('status').textContent]).toEqual(['26.25', 'false, undefined']);
  turn();
  // what nobody touched is as it would begin there, not its rounded figure turned
  expect([value('width'), screen.getByRole('status').textContent]).toEqual(['8', 'false, undefined']);
  turn();
  type('length', '96');
  turn();
  expect([value('length'), screen.getByRole('status').textContent]).toEqual(['29.261', 'true, 29.261']);
  turn();
  expect(value('length')).toBe('96');
  turn();
  type('length', '30');
  turn();
  expect(value('length')).toBe('98.425');
  type('length', 'thirty');
  turn();
  expect([value('length'), value('width')]).toEqual(['thirty', '8']);
});
