import { Link } from 'react-router';

/** After a file is kept: where it stands now, and what is still to do so that studies use it. */
export function KeptNext({ kind }: { kind: 'farms' | 'weather' | 'normals' | 'prices' }) {
  if (kind === 'farms')
    return (
      <p>
        They stand among <Link to="/farms">the farms</Link> now.
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
