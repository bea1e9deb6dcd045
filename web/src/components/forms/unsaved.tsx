import { createContext, useCallback, useContext, useEffect, useId, useMemo, useRef, type ReactNode } from 'react';
import { useBlocker } from 'react-router';

interface Keeper {
  hold: (id: string) => void;
  release: (id: string) => void;
}

const Kept = createContext<Keeper | undefined>(undefined);

/** Asks before a page is left while a form on it holds what was not saved; another view of the same page leaves the form where it is and is not asked about. */
export function UnsavedProvider({ children }: { children: ReactNode }) {
  const forms = useRef(new Set<string>());
  const keeper = useMemo((): Keeper => {
    const closing = (e: BeforeUnloadEvent) => e.preventDefault();
    return {
      hold: (id) => {
        if (forms.current.size === 0) window.addEventListener('beforeunload', closing);
        forms.current.add(id);
      },
      release: (id) => {
        forms.current.delete(id);
        if (forms.current.size === 0) window.removeEventListener('beforeunload', closing);
      },
    };
  }, []);
  const blocker = useBlocker(
    useCallback(
      ({ currentLocation: from, nextLocation: to }: { currentLocation: { pathname: string }; nextLocation: { pathname: string } }) =>
        forms.current.size > 0 && from.pathname !== to.pathname,
      [],
    ),
  );
  return (
    <Kept value={keeper}>
      {children}
      {blocker.state === 'blocked' && <LeavingQuestion stay={() => blocker.reset()} leave={() => blocker.proceed()} />}
    </Kept>
  );
}

/** Holds a form's page as long as what is typed in it differs from what it began with. What is returned lets it go at once, once it is saved. */
export function useUnsaved(changed: boolean): () => void {
  const keeper = useContext(Kept);
  const id = useId();
  useEffect(() => {
    if (!changed) return undefined;
    keeper?.hold(id);
    return () => keeper?.release(id);
  }, [changed, keeper, id]);
  return useCallback(() => keeper?.release(id), [keeper, id]);
}

function LeavingQuestion({ stay, leave }: { stay: () => void; leave: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const box = dialog.current;
    if (box && !box.open) box.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      role="alertdialog"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-words`}
      className="leaving"
      onCancel={(e) => {
        e.preventDefault();
        stay();
      }}
    >
      <h2 id={`${id}-title`}>What you typed is not saved</h2>
      <p id={`${id}-words`}>Leaving this page gives it up. Stay to save it.</p>
      <button className="filled" onClick={stay}>
        stay on the page
      </button>{' '}
      <button className="link" onClick={leave}>
        leave without saving
      </button>
    </dialog>
  );
}
