/** An address that names a co-op this machine does not keep: says so, and leads on. Plain links, since there is no co-op to stay within. */
export function NoSuchCoop({ id }: { id: string }) {
  return (
    <div className="page">
      <main>
        <h1>There is no co-op &ldquo;{id}&rdquo; here.</h1>
        <p className="lead">
          The link names a co-op that is not kept on this machine: it was made on another one, or the co-op is gone. Ask the sender on which
          machine it opens.
        </p>
        <p>
          <a href="/">open the co-op of the last visit</a> or <a href="/co-ops">choose a co-op</a>
        </p>
      </main>
    </div>
  );
}
