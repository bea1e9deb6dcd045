import { useEffect, useRef, useState, type ReactNode } from 'react';

interface Props {
  /** What the table holds; a reader hears it before the figures. */
  name: string;
  className?: string;
  /** Seen above the table; without it the name is only heard. */
  caption?: ReactNode;
  children: ReactNode;
}

/** A table with its name. Where it is wider than the screen it scrolls by finger, wheel and keys, and says which columns are still out of sight. */
export function LedgerTable({ name, className, caption, children }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const [cut, setCut] = useState<string[] | null>(null);
  useEffect(() => {
    const box = frame.current;
    if (!box) return undefined;
    const look = () => {
      if (box.scrollWidth <= box.clientWidth + 1) setCut(null);
      else setCut(hiddenColumns(box));
    };
    look();
    box.addEventListener('scroll', look, { passive: true });
    const watch = typeof ResizeObserver === 'undefined' ? undefined : new ResizeObserver(look);
    watch?.observe(box);
    if (box.firstElementChild) watch?.observe(box.firstElementChild);
    return () => {
      box.removeEventListener('scroll', look);
      watch?.disconnect();
    };
  }, []);
  const scrolls = cut !== null;
  return (
    <>
      <div className="scroll" ref={frame} {...(scrolls ? { role: 'region', 'aria-label': `${name}, scrolls sideways`, tabIndex: 0 } : {})}>
        <table className={className}>
          <caption className={caption === undefined ? 'hidden' : 'small quiet'}>{caption ?? name}</caption>
          {children}
        </table>
      </div>
      {scrolls && (
        <p className="small quiet sideways">
          Scrolls sideways. {cut.length > 0 ? `Still to the right: ${cut.join('; ')}.` : 'This is its right end.'}
        </p>
      )}
    </>
  );
}

/** Names of the columns whose right edge is beyond the box's. */
function hiddenColumns(box: HTMLElement): string[] {
  const edge = box.getBoundingClientRect().right;
  return [...box.querySelectorAll('thead th')]
    .filter((th) => th.getBoundingClientRect().right > edge + 8)
    .map((th) => (th.textContent ?? '').replace(/\s+/g, ' ').trim())
    .filter((words) => words !== '');
}
