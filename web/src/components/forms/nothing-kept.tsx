/** Beside a button that brings in a file, after a press that kept nothing: why, and what to do. */
export function NothingKept({ asked }: { asked: boolean }) {
  return (
    <span role="status" className={asked ? 'fault' : undefined} style={asked ? { display: 'block' } : undefined}>
      {asked &&
        'Nothing was kept: some rows are wrong, as the list above says. Mend the file, or tick the box to keep what is right in it.'}
    </span>
  );
}
