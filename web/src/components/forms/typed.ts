import { useState } from 'react';
import type { UnitSystem } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** What a form holds: as typed, as it began, and, once the units were switched, both sides of that turn. */
interface Held<T> {
  units: UnitSystem;
  typed: T;
  was: T;
  before?: { typed: T; turned: T };
}

type Turn<T> = (typed: T, from: UnitSystem, to: UnitSystem) => T;

/** The same in the other units: what nobody touched as the form would begin with it there, what was not touched since the last switch as it stood before that, the rest turned. */
function turnedTo<T extends object>(held: Held<T>, to: UnitSystem, begin: (u: UnitSystem) => T, turn: Turn<T>): Held<T> {
  const was = begin(to);
  const typed = { ...turn(held.typed, held.units, to) };
  for (const key of Object.keys(typed) as (keyof T)[]) {
    if (same(held.typed[key], held.was[key])) typed[key] = was[key];
    else if (held.before && same(held.typed[key], held.before.turned[key])) typed[key] = held.before.typed[key];
  }
  return { units: to, typed, was, before: { typed: held.typed, turned: typed } };
}

/**
 * What is typed into a form. With `turn` it follows the switch of units, and switching back gives again what was typed; without it nothing
 * in the form has a unit that the switch turns.
 */
export function useTyped<T extends object>(begin: (u: UnitSystem) => T, turn?: Turn<T>) {
  const { units } = useUnits();
  const [first] = useState(() => begin);
  const [held, hold] = useState<Held<T>>(() => {
    const was = begin(units);
    return { units, typed: was, was };
  });
  let now = held;
  if (turn && held.units !== units) {
    now = turnedTo(held, units, first, turn);
    hold(now);
  }
  const set = (next: T | ((typed: T) => T)) => hold((h) => ({ ...h, typed: typeof next === 'function' ? next(h.typed) : next }));
  return { typed: now.typed, set, was: now.was, changed: !same(now.typed, now.was) };
}
