import { Field } from '../../components/forms/field.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import type { UnitSystem } from '../../lib/units/format.ts';
import { turnedFiring } from '../../lib/units/turned.ts';
import { readNumber } from '../../lib/units/typed-number.ts';

const KBTU_PER_KWH = 3.412142;

/** What a burner fires, in kBtu/h or kW by the switch; burner hours need it to become heat. */
export function FiringRate({ units, change }: { units: UnitSystem; change: (kw: number | null) => void }) {
  const { typed, set } = useTyped(
    () => ({ rate: '' }),
    (t, from, to) => ({ rate: turnedFiring(t.rate, from, to) }),
  );
  const number = { least: 0, such: units === 'us' ? '250' : '73' };
  return (
    <Field
      label={`firing rate, ${units === 'us' ? 'kBtu/h' : 'kW'}`}
      value={typed.rate}
      change={(text) => {
        set({ rate: text });
        const { value, fault } = readNumber(text, number);
        change(value === null || fault !== undefined || value === 0 ? null : units === 'us' ? value / KBTU_PER_KWH : value);
      }}
      name="firingRateKw"
      faults={[]}
      number={number}
    />
  );
}
