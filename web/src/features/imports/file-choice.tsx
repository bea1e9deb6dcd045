import { useEffect, useRef, useState } from 'react';
import { type ImportKind, NotTaken, send, SENT_FROM_BYTES, type UploadFault } from '../../lib/upload.ts';

export interface Chosen {
  name: string;
  text: string;
  /** Set where the file was sent as it is, being too long for a request. */
  uploadId?: string;
}

interface Props {
  kind: ImportKind;
  chosen: (file: Chosen) => void;
}

/** Chooses a file; a long one is sent at once, with its progress and a way to stop it. */
export function FileChoice({ kind, chosen }: Props) {
  const [share, setShare] = useState<number>();
  const [fault, setFault] = useState<UploadFault>();
  const [size, setSize] = useState('');
  const running = useRef<AbortController>(undefined);
  useEffect(() => () => running.current?.abort(), []);
  const take = async (file: File) => {
    running.current?.abort();
    setFault(undefined);
    setSize('');
    if (file.size <= SENT_FROM_BYTES) {
      chosen({ name: file.name, text: await file.text() });
      return;
    }
    const stop = new AbortController();
    running.current = stop;
    setShare(0);
    chosen({ name: file.name, text: '' });
    try {
      const sent = await send(kind, file, setShare, stop.signal);
      setSize(`${(sent.bytes / (1 << 20)).toFixed(1)} MB were sent; look at the file now.`);
      chosen({ name: sent.fileName, text: '', uploadId: sent.uploadId });
    } catch (e) {
      setFault(e instanceof NotTaken ? e.fault : { message: String(e), remedy: '' });
    } finally {
      if (running.current === stop) setShare(undefined);
    }
  };
  return (
    <div>
      <label>
        <span>the file</span>
        <input
          type="file"
          accept=".csv,.txt,.dly,text/csv"
          onChange={(e) => {
            const file = e.target.files?.[0];
            if (file) void take(file);
          }}
        />
      </label>
      <div role="status">
        {share !== undefined && (
          <>
            <progress value={share} aria-label="share of the file that is sent" /> {Math.round(100 * share)} % sent{' '}
            <button type="button" className="link" onClick={() => running.current?.abort()}>
              stop sending
            </button>
          </>
        )}
        {size && <span className="caption">{size}</span>}
        {fault && (
          <span className="fault">
            {fault.message} {fault.remedy}
          </span>
        )}
      </div>
    </div>
  );
}
