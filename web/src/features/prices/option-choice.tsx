import { HouseFinder } from '../../components/forms/house-finder.tsx';
import { useUnits } from '../../lib/units/units-context.tsx';

/** Which house's option the page is reckoned for. */
export function OptionChoice({
  houseId,
  options,
  optionId,
  choose,
}: {
  houseId: string;
  options: readonly { id: string; title: string }[];
  optionId: string;
  choose: (optionId: string) => void;
}) {
  const { say } = useUnits();
  if (houseId === '') return null;
  return (
    <div className="form">
      <HouseFinder label="house" value={houseId} change={(id) => choose(`${id}~`)} />
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
