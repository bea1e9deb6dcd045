import { coopBase, readAddress, rememberedCoop } from '../lib/graphql/chosen-coop.ts';

export interface Choice {
  id: string;
  name: string;
  isChosen: boolean;
}

export interface Asked {
  coops: readonly Choice[];
  /** The co-op that keeps what the address names. */
  coopOf?: Choice | null;
}

export interface Arrival {
  /** The co-op to open; undefined where there is none, or where the named one is not here. */
  coopId?: string | undefined;
  /** The whole address to show. */
  address: string;
  /** What a reader has to know about where the link led. */
  notice?: string;
  /** The co-op that the address names and that is not here. */
  missing?: string;
}

const kept: Record<string, string> = {
  farms: 'farm',
  houses: 'house',
  supplies: 'tank or meter',
  options: 'option',
  loans: 'loan case',
  rounds: 'round',
  awards: 'award',
};

/** The thing with an identifier that a page is about, if it is about one. */
export function thingOf(path: string): { id: string; word: string } | undefined {
  const [first = '', id = ''] = path.split('/').slice(1);
  const word = kept[first];
  if (
    !word ||
    id === '' ||
    (first === 'houses' && id === 'new') ||
    (first === 'loans' && id === 'book') ||
    (first === 'rounds' && id === 'enter')
  )
    return undefined;
  try {
    return { id: decodeURIComponent(id), word };
  } catch {
    return undefined;
  }
}

/**
 * Which co-op an address opens: the one that keeps the thing it names, else the one it names itself, else the one remembered, else the server's first.
 * An address of before co-ops were named in it (/houses/x, ?coop=y) goes on working.
 */
export async function arrive(url: URL, ask: (id: string) => Promise<Asked>): Promise<Arrival> {
  const { coopId: inPath, path } = readAddress(url.pathname);
  const thing = thingOf(path);
  const inQuery = url.searchParams.get('coop') ?? undefined;
  const query = new URLSearchParams(url.searchParams);
  query.delete('coop');
  const rest = path + (query.size > 0 ? `?${query.toString()}` : '') + url.hash;
  const named = inPath ?? inQuery;

  const { coops, coopOf } = await ask(thing?.id ?? '');
  const remembered = rememberedCoop();
  const [byName, byMemory] = [named, remembered].map((id) => coops.find((c) => c.id === id));
  const expected = byName ?? (named ? undefined : (byMemory ?? coops.find((c) => c.isChosen)));
  if (thing && coopOf) {
    const other = expected ? coopOf.id !== expected.id : named !== undefined;
    return {
      coopId: coopOf.id,
      address: coopBase(coopOf.id) + rest,
      ...(other
        ? { notice: `This ${thing.word} is kept by ${coopOf.name}, so that co-op is open now${expected ? `, not ${expected.name}` : ''}.` }
        : {}),
    };
  }
  if (named && !byName) return { address: url.pathname + url.search + url.hash, missing: named };
  return expected ? { coopId: expected.id, address: coopBase(expected.id) + rest } : { address: rest };
}
