import { Link } from 'react-router';
import type { ImportKind } from '../../lib/upload.ts';

/** After a file is kept: where it stands now, and what is still to do so that studies use it. */
export function KeptNext({ kind }: { kind: ImportKind }) {
  if (kind === 'farms')
    return (
      <p>
        They stand among <Link to="/farms">the farms</Link> now.
      </p>
    );
  if (kind === 'quotes')
    return (
      <p>
        They stand on the pages of their <Link to="/farms">farms</Link>; the newest quote that names a house and retrofit is what its outlay
        is reckoned with. <Link to="/studies">Run a study</Link> to have them in the figures.
      </p>
    );
  if (kind === 'weather' || kind === 'normals')
    return (
      <p>
        It stands under <Link to="/winters">winters</Link> now; a farm goes by the station that it names.
      </p>
    );
  return (
    <p>
      Studies go on with the record of before until this one is chosen under <i>Records</i> on <Link to="/fuel">Fuel</Link>.
    </p>
  );
}
