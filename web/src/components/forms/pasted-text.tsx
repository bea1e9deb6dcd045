const SHOWN = 20_000;

interface Props {
  text: string;
  rows: number;
  change: (text: string) => void;
}

/** The text of a file, to paste or to change. A long one shows its beginning and cannot be typed over, for what is not shown would be lost. */
export function PastedText({ text, rows, change }: Props) {
  const isLong = text.length > SHOWN;
  return (
    <>
      <label>
        <span>or paste it</span>
        <textarea
          rows={rows}
          style={{ width: '100%' }}
          value={text.slice(0, SHOWN)}
          readOnly={isLong}
          aria-describedby={isLong ? 'pasted-long' : undefined}
          onChange={(e) => change(e.target.value)}
        />
      </label>
      {isLong && (
        <p className="caption" id="pasted-long">
          The first {SHOWN.toLocaleString('en-US')} of {text.length.toLocaleString('en-US')} characters; all of them are read. Change a long
          text in its own file, or{' '}
          <button type="button" className="link" onClick={() => change('')}>
            empty this
          </button>{' '}
          and paste anew.
        </p>
      )}
    </>
  );
}
