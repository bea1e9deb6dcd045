import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { type KeyboardEvent, useEffect, useState } from 'react';

const PAUSE_MS = 250;

export interface FoundList<T> {
  total: number;
  items: T[];
}

/**
 * One thing out of a list of any size: what is typed shortens the list after a pause. Enter takes the first that fits, and nothing while the list of
 * what was typed before still stands.
 */
export function useFinder<T>(key: string, ask: (text: string | null) => Promise<FoundList<T>>) {
  const [typed, type] = useState('');
  const [text, look] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => look(typed.trim()), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [typed]);
  const { data, isPlaceholderData } = useQuery({
    queryKey: [key, text],
    queryFn: () => ask(text || null),
    placeholderData: keepPreviousData,
  });
  const list = data?.items ?? [];
  const onEnter = (take: (found: T) => void) => (e: KeyboardEvent) => {
    if (e.key !== 'Enter') return;
    e.preventDefault();
    const first = typed.trim() !== '' && typed.trim() === text && !isPlaceholderData ? list[0] : undefined;
    if (first) take(first);
  };
  const rest = data && data.total > list.length ? data.total : undefined;
  return {
    list,
    typed,
    type,
    onEnter,
    none: data !== undefined && list.length === 0,
    /** What to say of those that are not listed; empty where all are. */
    more: rest === undefined ? '' : `${String(list.length)} of the ${rest.toLocaleString('en-US')} that fit; type more of the name.`,
  };
}
