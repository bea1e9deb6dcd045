import { createClient } from 'graphql-sse';
import { coopHeaders } from './chosen-coop.ts';
import type { TypedDocumentString } from './generated/graphql';
import { graphql } from './generated/index.ts';

/** What every form asks of a save; documents name it as `...Saved`. */
graphql(`
  fragment Saved on SavePayload {
    changeId
    conflict
    faults {
      field
      message
      remedy
    }
  }
`);

/** A fault the server told: message, code and field. */
export class ServerFault extends Error {
  constructor(
    message: string,
    readonly code?: string,
    readonly field?: string,
  ) {
    super(message);
  }
}

interface Answer<T> {
  data?: T;
  errors?: { message: string; extensions?: { code?: string; field?: string } }[];
}

/** JSON has no word for what is no number and would say nothing instead; so it is said here. */
function numbersOnly(field: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    const words = field.replace(/(Usd.*|Kw|Kwh.*|C|M)$/, '').replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`);
    throw new ServerFault(`What was typed for "${words}" is no number. Write digits only, such as 30 or 2.5.`, 'NOT_A_NUMBER', field);
  }
  return value;
}

export async function ask<T, V>(document: TypedDocumentString<T, V>, variables?: V): Promise<T> {
  const response = await fetch('/graphql', {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...coopHeaders() },
    body: JSON.stringify({ query: document.toString(), variables }, numbersOnly),
  });
  const answer = (await response.json()) as Answer<T>;
  const fault = answer.errors?.[0];
  if (fault || !answer.data) {
    throw new ServerFault(
      fault?.message ?? `The server answered ${String(response.status)}.`,
      fault?.extensions?.code,
      fault?.extensions?.field,
    );
  }
  return answer.data;
}

const events = createClient({ url: '/graphql', singleConnection: false, headers: coopHeaders });

/** Follows a subscription until it ends; the answer stops it. */
export function follow<T, V extends Record<string, unknown>>(
  document: TypedDocumentString<T, V>,
  variables: V,
  next: (data: T) => void,
  end: () => void,
): () => void {
  return events.subscribe<T>({ query: document.toString(), variables }, { next: (r) => r.data && next(r.data), error: end, complete: end });
}

/** A name of a request that no other has; works over plain HTTP too, where the browser has no randomUUID. */
export const requestId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (b) => b.toString(16).padStart(2, '0')).join('');
