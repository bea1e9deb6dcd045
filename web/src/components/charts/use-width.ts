import { useEffect, useState, type RefObject } from 'react';

/** Width of an element in pixels, so that a drawing can be made at one user unit a pixel and its text stays readable. */
export function useWidth(ref: RefObject<HTMLElement | null>, otherwise = 640): number {
  const [width, set] = useState(otherwise);
  useEffect(() => {
    const element = ref.current;
    if (!element || typeof ResizeObserver === 'undefined') return undefined;
    const observer = new ResizeObserver(([entry]) => {
      const found = entry?.contentRect.width ?? 0;
      if (found > 0) set(Math.floor(found));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return width;
}
