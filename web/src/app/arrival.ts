import { useEffect, useLayoutEffect, useRef } from 'react';
import { useLocation, useNavigationType } from 'react-router';
import { keepFocus } from './focus-keeper.ts';
import { titleOf } from './page-title.ts';

/** Names the document after its page, and after a link was followed puts the focus on the page's head, so that a reader begins there. Not on the first load, which begins at the top. */
export function useArrival() {
  const { pathname } = useLocation();
  const how = useNavigationType();
  const main = useRef<HTMLElement>(null);
  useEffect(() => (main.current ? keepFocus(main.current) : undefined), []);
  const from = useRef(pathname);
  // before the page's own effects, so that a page that knows its name puts it over this one
  useLayoutEffect(() => {
    document.title = titleOf(pathname);
  }, [pathname]);
  useEffect(() => {
    if (from.current === pathname) return undefined;
    from.current = pathname;
    if (how === 'POP' || !main.current) return undefined;
    const inside = main.current;
    const focus = () => {
      const head = inside.querySelector('h1');
      if (!head) return false;
      head.tabIndex = -1;
      head.focus({ preventScroll: true });
      return true;
    };
    if (focus()) return undefined;
    // a page that still reads its figures has no head yet
    const watch = new MutationObserver(() => {
      if (document.activeElement !== document.body && document.activeElement?.closest('main')) watch.disconnect();
      else if (focus()) watch.disconnect();
    });
    watch.observe(inside, { childList: true, subtree: true });
    return () => watch.disconnect();
  }, [pathname, how]);
  return main;
}
