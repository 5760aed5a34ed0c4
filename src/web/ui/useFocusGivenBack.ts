import { type RefObject, useEffect } from 'react';

const remembered = 20;

/**
 * Who works by keyboard keeps a place: when what has the focus is taken away (a form that was saved, a row that was removed), the focus
 * goes back to where it was before, or to `place`. Nothing scrolls, so that whoever points sees no jump.
 */
export function useFocusGivenBack(place: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    let had: readonly HTMLElement[] = [];
    const remember = ({ target }: FocusEvent): void => {
      if (target instanceof HTMLElement) had = [...had.filter(one => one !== target && one.isConnected), target].slice(-remembered);
    };
    const giveBack = (): void => {
      if (document.activeElement !== document.body || had.at(-1)?.isConnected !== false) return;
      had = had.filter(one => one.isConnected);
      (had.findLast(one => place.current?.contains(one)) ?? place.current)?.focus({ preventScroll: true });
    };
    const watch = new MutationObserver(giveBack);
    document.addEventListener('focusin', remember);
    watch.observe(document.body, { childList: true, subtree: true });
    return () => {
      document.removeEventListener('focusin', remember);
      watch.disconnect();
    };
  }, [place]);
}
