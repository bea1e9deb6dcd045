import { useEffect } from 'react';

/** Names the document after what the page shows, most particular first: "house 1, Alder Reach". Without a name the page keeps its general one. */
export function usePageName(...parts: (string | null | undefined)[]) {
  const name = parts.filter(Boolean).join(', ');
  useEffect(() => {
    // the frame names the page in general before this runs
    if (name) document.title = `${name} - FarmPortfolio`;
  }, [name]);
}
