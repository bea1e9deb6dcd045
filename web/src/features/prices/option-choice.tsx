import { useUnits } from '../../lib/units/units-context.tsx';

interface Farm {
  id: string;
  name: string;
  houses: readonly { id: string; name: string }[];
}

/** Which house's option the page is reckoned for. */
export function OptionChoice({
  farms,
  houseId,
  options,
  optionId,
  choose,
}: {
  farms: readonly Farm[];
  houseId: string;
  options: readonly { id: string; title: string }[];
  optionId: string;
  choose: (optionId: string) => void;
}) {
  const { say } = useUnits();
  if (farms.length === 0) return null;
  return (
    <div className="form">
      <label>
        <span>house</span>
        <select value={houseId} onChange={(e) => choose(`${e.target.value}~`)}>
          {farms
            .filter((f) => f.houses.length > 0)
            .map((f) => (
              <optgroup key={f.id} label={f.name}>
                {f.houses.map((h) => (
                  <option key={h.id} value={h.id}>
                    {f.name}, {h.name}
                  </option>
                ))}
              </optgroup>
            ))}
        </select>
      </label>
      <label>
        <span>option</span>
        <select value={optionId} onChange={(e) => choose(e.target.value)}>
          {options.map((o) => (
            <option key={o.id} value={o.id}>
              {say(o.title)}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}
