const CONTROLS = 'input,select,textarea,button,a[href],summary,[tabindex]:not([tabindex="-1"])';

const isOff = (element: Element) => element.matches(':disabled');

function firstControl(inside: Element): HTMLElement | undefined {
  const all = [...(inside.matches(CONTROLS) ? [inside] : []), ...inside.querySelectorAll(CONTROLS)];
  return all.find((e): e is HTMLElement => e instanceof HTMLElement && !isOff(e));
}

/**
 * Brings focus back that was lost because what had it went away or was switched off while it works: to the same control once it can be pressed again; else to the first control of
 * what came in its place; else to the nearest part of the page that still stands. Whoever goes by keyboard is then not thrown back to the top of the page. Another page, and
 * whatever was pressed by pointer elsewhere, are none of its business.
 */
export function keepFocus(main: HTMLElement): () => void {
  let last: { element: HTMLElement; around: HTMLElement[]; path: string } | undefined;
  let came: Element[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  const took = (e: FocusEvent) => {
    last = undefined;
    if (!(e.target instanceof HTMLElement) || e.target === main || !main.contains(e.target)) return;
    const around: HTMLElement[] = [];
    for (let up = e.target.parentElement; up && up !== main; up = up.parentElement) around.push(up);
    last = { element: e.target, around, path: window.location.pathname };
    came = [];
  };
  const forget = () => {
    last = undefined;
  };
  const look = () => {
    if (!last || document.activeElement !== document.body) return;
    const { element, around, path } = last;
    if (path !== window.location.pathname) forget();
    else if (element.isConnected) {
      if (!isOff(element)) element.focus({ preventScroll: true });
    } else {
      const part = around.find((a) => a.isConnected);
      if (!part) return;
      const control = came.filter((c) => c.isConnected && part.contains(c)).map(firstControl)[0];
      if (!control) part.tabIndex = -1;
      (control ?? part).focus({ preventScroll: true });
    }
  };
  const watch = new MutationObserver((records) => {
    if (!last) return;
    if (!last.element.isConnected)
      came.push(...records.flatMap((r) => [...r.addedNodes]).filter((n): n is Element => n instanceof Element));
    clearTimeout(timer);
    timer = setTimeout(look);
  });
  document.addEventListener('focusin', took);
  document.addEventListener('pointerdown', forget);
  watch.observe(main, { childList: true, subtree: true, attributes: true, attributeFilter: ['disabled'] });
  return () => {
    clearTimeout(timer);
    watch.disconnect();
    document.removeEventListener('focusin', took);
    document.removeEventListener('pointerdown', forget);
  };
}
