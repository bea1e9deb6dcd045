import { Link } from 'react-router';

/** Where a page belongs: what it is part of as links, itself last. */
export function Crumbs({ above, here }: { above: readonly (readonly [to: string, name: string])[]; here: string }) {
  return (
    <nav className="crumbs small" aria-label="where this page belongs">
      {above.map(([to, name]) => (
        <span key={to}>
          <Link to={to}>{name}</Link>
          {' / '}
        </span>
      ))}
      <span aria-current="page">{here}</span>
    </nav>
  );
}
