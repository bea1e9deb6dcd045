const KEY = 'coop';

/** Header that names the co-op a request is about; without it the server takes the first of one's own. */
const COOP_HEADER = 'Farm-Coop';

/** Takes the co-op that the address names (?coop=...) as the one chosen, so that a link opens the same view. */
export function takeCoopFromAddress(address: URL = new URL(window.location.href)): void {
  const named = address.searchParams.get(KEY);
  if (named) localStorage.setItem(KEY, named);
}

export const chosenCoop = (): string | undefined => localStorage.getItem(KEY) ?? undefined;

/** Remembers the co-op to work in; undefined = the server's first. */
export function chooseCoop(id: string | undefined): void {
  if (id) localStorage.setItem(KEY, id);
  else localStorage.removeItem(KEY);
}

export const coopHeaders = (): Record<string, string> => {
  const id = chosenCoop();
  return id ? { [COOP_HEADER]: id } : {};
};
