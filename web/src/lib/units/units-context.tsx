import { createContext, useContext, useState, type ReactNode } from 'react';
import type { UnitSystem } from './format.ts';
import { told } from './told.ts';

const Units = createContext<{ units: UnitSystem; setUnits: (u: UnitSystem) => void }>({ units: 'us', setUnits: () => undefined });

const KEY = 'units';

export function UnitsProvider({ children }: { children: ReactNode }) {
  const [units, set] = useState<UnitSystem>(() => (localStorage.getItem(KEY) === 'si' ? 'si' : 'us'));
  const setUnits = (u: UnitSystem) => {
    localStorage.setItem(KEY, u);
    set(u);
  };
  return <Units value={{ units, setUnits }}>{children}</Units>;
}

/** The chosen units, the switch, and words of the server turned into them. */
export const useUnits = () => {
  const { units, setUnits } = useContext(Units);
  return { units, setUnits, say: (words: string) => told(words, units) };
};
