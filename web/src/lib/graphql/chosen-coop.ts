const KEY = 'coop';
const PREFIX = '/co-op/';

/** Header that names the co-op a request is about; without it the server takes the first of one's own. */
const COOP_HEADER = 'Farm-Coop';

/** The co-op of this tab; undefined until the address is read, and where there is no co-op at all. */
let current: string | undefined;

/** The co-op remembered from the last visit, for an address that names none. */
export const rememberedCoop = (): string | undefined => localStorage.getItem(KEY) ?? undefined;

/** Takes the co-op to work in for this tab, and remembers it for the next visit. */
export function openCoop(id: string | undefined): void {
  current = id;
  if (id) localStorage.setItem(KEY, id);
}

export const coopHeaders = (): Record<string, string> => (current ? { [COOP_HEADER]: current } : {});

/** The first part of every address within a co-op. */
export const coopBase = (id: string): string => PREFIX + encodeURIComponent(id);

export interface NamedAddress {
  /** The co-op the address names; undefined where it names none. */
  coopId?: string;
  /** The page within the co-op, from its slash on. */
  path: string;
}

/** Reads the co-op out of a path: /co-op/<id>/houses is the page /houses of that co-op. */
export function readAddress(pathname: string): NamedAddress {
  if (!pathname.startsWith(PREFIX)) return { path: pathname };
  const [id = '', ...rest] = pathname.slice(PREFIX.length).split('/');
  const coopId = decoded(id);
  return coopId ? { coopId, path: `/${rest.join('/')}` } : { path: pathname };
}

function decoded(part: string): string | undefined {
  try {
    return decodeURIComponent(part) || undefined;
  } catch {
    return undefined;
  }
}

/** Goes to a page of another co-op. The whole program is loaded anew, so that nothing of the first one is left on the screen. */
export function goToCoop(id: string, path: string): void {
  window.location.assign(coopBase(id) + path);
}
