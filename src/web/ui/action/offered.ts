import { useEffect, useRef, useSyncExternalStore } from 'react';
import { type Action, canRun, isPressed } from './action.ts';

type Holder = { readonly current: readonly Action[] };

/** What the open screen and its forms offer, the latest last; held apart from the page, since keys and palette ask for it at any time. */
let holders: readonly Holder[] = [];
const listeners = new Set<() => void>();

function change(next: readonly Holder[]): void {
  holders = next;
  for (const tell of listeners) tell();
}

/** Offers actions to the keyboard and the palette for as long as the component that calls it is shown. */
export function useOffered(actions: readonly Action[]): void {
  const holder = useRef(actions);
  useEffect(() => {
    holder.current = actions;
  });
  useEffect(() => {
    change([...holders, holder]);
    return () => change(holders.filter(one => one !== holder));
  }, []);
}

/** What can be done now: what came last stands first, and stands for an earlier one of the same name. */
function actionsNow(): readonly Action[] {
  const all = holders.toReversed().flatMap(({ current }) => current);
  return all.filter((action, at) => canRun(action) && all.findIndex(one => nameOf(one) === nameOf(action)) === at);
}

/** Does what is offered by this name, unless it has become impossible since it was shown. */
export function runOffered(name: string): void {
  actionsNow()
    .find(action => nameOf(action) === name)
    ?.run();
}

/** Who shows what is offered is drawn again when a screen comes or goes. */
export function useActionsNow(): readonly Action[] {
  useSyncExternalStore(
    tell => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => holders,
  );
  return actionsNow();
}

export function nameOf({ label, about }: Action): string {
  return about ?? label;
}

/** Listens for shortcuts, for good. A key that no action takes goes where it always went. */
export function listenForShortcuts(): void {
  addEventListener('keydown', event => {
    if (event.defaultPrevented || event.isComposing || document.querySelector('dialog:modal') !== null) return;
    const action = actionsNow().find(({ shortcut }) => shortcut !== undefined && isPressed(shortcut, event));
    if (action === undefined) return;
    event.preventDefault();
    // A key that is held down is one press.
    if (!event.repeat) action.run();
  });
}
