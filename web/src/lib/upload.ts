import { coopHeaders } from './graphql/chosen-coop.ts';

/** Files longer than this are sent as they are, not as text within a request. */
export const SENT_FROM_BYTES = 1 << 20;

/** Name of a text that was pasted, not read from a file. */
export const PASTED = 'pasted';

/** Name of a text after it was typed over: that of its file, for most of it is the file's still. */
export const typedOver = (name: string) => (name === PASTED || name.endsWith(', edited') ? name : `${name}, edited`);

export interface Sent {
  uploadId: string;
  fileName: string;
  bytes: number;
}

export interface UploadFault {
  message: string;
  remedy: string;
}

/** What a file can be. */
export type ImportKind = 'farms' | 'quotes' | 'weather' | 'normals' | 'prices';

/** Why a file was not taken. */
export class NotTaken extends Error {
  constructor(readonly fault: UploadFault) {
    super(`${fault.message} ${fault.remedy}`);
  }
}

/** Sends a file; tells the share sent, 0 to 1; the signal stops it. */
export function send(kind: ImportKind, file: File, told: (share: number) => void, signal: AbortSignal): Promise<Sent> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', `/uploads/${kind}?file=${encodeURIComponent(file.name)}`);
    request.setRequestHeader('content-type', 'application/octet-stream');
    for (const [name, value] of Object.entries(coopHeaders())) request.setRequestHeader(name, value);
    request.upload.onprogress = (e) => e.lengthComputable && told(e.loaded / e.total);
    request.onload = () => {
      const answer = parsed(request.responseText);
      if (request.status === 200 && answer.uploadId) resolve(answer as Sent);
      else reject(new NotTaken(answer.faults?.[0] ?? { message: `The server answered ${String(request.status)}.`, remedy: 'Try again.' }));
    };
    request.onerror = () =>
      reject(new NotTaken({ message: 'The file did not arrive whole.', remedy: 'Look whether the server runs, and send it again.' }));
    request.onabort = () => reject(new NotTaken({ message: 'Sending was stopped.', remedy: 'Nothing of the file was kept.' }));
    signal.addEventListener('abort', () => request.abort());
    request.send(file);
  });
}

function parsed(text: string): Partial<Sent> & { faults?: UploadFault[] } {
  try {
    return JSON.parse(text) as Partial<Sent> & { faults?: UploadFault[] };
  } catch {
    return {};
  }
}
