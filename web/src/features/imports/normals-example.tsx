import { temperature } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';

const EXAMPLE = `month,mean temperature (F),heating degree days (F)
January,19.4,1414
February,22.1,1201
...
December,26.4,1197`;

/** How a sheet of monthly normals looks, and what a station known by it alone cannot tell. */
export function NormalsExample() {
  const { units } = useUnits();
  return (
    <>
      <p>
        A head and twelve rows, each month once, by its name or number. Highest and lowest of the usual day may stand in place of the mean
        (mean max, mean min); degree days, to {temperature(18.333, units)}, are only held against the means.
      </p>
      <pre className="small scroll" aria-label="example of monthly normals" tabIndex={0}>
        {EXAMPLE}
      </pre>
      <p className="caution">
        Normals hold no winter: days within a month are made by rule, the cold spells that winters really had are not in them, and bills
        cannot be held against them. A daily or hourly record, even of a station farther off, tells more.
      </p>
    </>
  );
}
