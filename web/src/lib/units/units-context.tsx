import { createContext, useContext, useState, type ReactNode } from 'react';
import { fuelAmount, USUAL_HEATING, type Fuel, type HeatingValues, type UnitSystem } from './format.ts';
import { told } from './told.ts';

interface Chosen {
  units: UnitSystem;
  setUnits: (u: UnitSystem) => void;
  /** The heating values that the co-op chose. */
  heating: HeatingValues;
}

const Units = createContext<Chosen>({ units: 'us', setUnits: () => undefined, heating: USUAL_HEATING });

/** Heating values for all pages inside: what they show in gallons or tons was turned into kWh by the same. */
export function HeatingProvider({ heating, children }: { heating: HeatingValues | undefined; children: ReactNode }) {
  const known = useContext(Units);
  return <Units value={{ ...known, heating: heating ?? known.heating }}>{children}</Units>;
}

const KEY = 'units';

export function UnitsProvider({ children }: { children: ReactNode }) {
  const [units, set] = useState<UnitSystem>(() => (localStorage.getItem(KEY) === 'si' ? 'si' : 'us'));
  const setUnits = (u: UnitSystem) => {
    localStorage.setItem(KEY, u);
    set(u);
  };
  return <Units value={{ units, setUnits, heating: USUAL_HEATING }}>{children}</Units>;
}

/** The chosen units, the switch, words of the server turned into them, and fuel in the unit it is bought by. */
export const useUnits = () => {
  const { units, setUnits, heating } = useContext(Units);
  return {
    units,
    setUnits,
    heating,
    say: (words: string) => told(words, units),
    amount: (kwh: number, fuel: Fuel) => fuelAmount(kwh, fuel, units, heating),
  };
};
