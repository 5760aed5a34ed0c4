import type { QueryClient } from '@tanstack/react-query';
import { api } from '../api.ts';
import { type Heard, hearServer } from './hearServer.ts';
import { lockChannel } from './lockChannel.ts';
import { type LockPresence, startPresence } from './lockPresence.ts';

/** The first word of the key of what is read about clients, or made of it. */
const ofClients: ReadonlySet<unknown> = new Set(['client', 'clients', 'propose', 'page on paper', 'page aloud']);
const isOfClients = ({ queryKey }: { readonly queryKey: readonly unknown[] }): boolean => ofClients.has(queryKey[0]);
const touchMilliseconds = 10_000;

/**
 * Listens to the program in this window, for good. On the lock a screen of clients goes with its page: loading another one leaves nothing
 * in memory, no draft, no dialog, no answer. Other screens keep what was typed there and let go of what they show of clients.
 */
export function keepDoor(queries: QueryClient, unmount: () => void): void {
  let isGoing = false;
  const isOnClients = (): boolean => location.pathname.startsWith('/clients');
  const presence = startPresence(() => {
    queries.removeQueries({ predicate: isOfClients });
    // Without the program there is no other page to load.
    if (!isOnClients() || presence.now().shown === 'dropped') return;
    isGoing = true;
    unmount();
    document.body.replaceChildren();
    location.replace('/clients');
  });
  // A screen that asks before words are lost must not keep a locked page.
  addEventListener('beforeunload', event => isGoing && event.stopImmediatePropagation(), { capture: true });
  hideFromHistory(isOnClients);
  askAgainWhenOpened(queries, presence);
  listen(presence);
  tellTouches(presence);
}

/** Opened in another window: what was refused here is asked again. */
function askAgainWhenOpened(queries: QueryClient, presence: LockPresence): void {
  let before = presence.now().status?.state;
  presence.subscribe(() => {
    const state = presence.now().status?.state;
    if (before === 'locked' && state === 'open') void queries.invalidateQueries({ predicate: isOfClients });
    before = state;
  });
}

/** A page that the browser keeps for its back button is hidden before it is kept, and read anew when it comes back. */
function hideFromHistory(isOnClients: () => boolean): void {
  addEventListener('pagehide', () => {
    if (isOnClients()) document.body.hidden = true;
  });
  addEventListener('pageshow', ({ persisted }) => {
    if (persisted) location.reload();
  });
}

function listen(presence: LockPresence): void {
  const hear = (heard: Heard): void => presence.hear(heard);
  if (typeof SharedWorker === 'undefined') {
    hearServer(hear);
    return;
  }
  const channel = new BroadcastChannel(lockChannel);
  channel.onmessage = ({ data }: MessageEvent<Heard>) => hear(data);
  // It lives as long as a window holds it.
  try {
    const worker = new SharedWorker(new URL('./lockWorker.ts', import.meta.url), { type: 'module' });
    worker.onerror = () => hearServer(hear);
    worker.port.start();
  } catch {
    // Forbidden in this browser, as its storage is.
    hearServer(hear);
  }
}

/** Tells the program now and then that a key or a pointer was moved here, the last time too. */
function tellTouches(presence: LockPresence): void {
  let isWaiting = false;
  let isTouched = false;
  const tell = (): void => {
    const { status } = presence.now();
    if (status?.state !== 'open' || !status.hasPassphrase) return;
    isTouched = true;
    if (isWaiting) return;
    isWaiting = true;
    isTouched = false;
    // Without an answer the stream says that the program is gone.
    api.clients.lock.touch.$post().catch(() => undefined);
    setTimeout(() => {
      isWaiting = false;
      if (isTouched) tell();
    }, touchMilliseconds);
  };
  for (const kind of ['keydown', 'pointerdown', 'pointermove', 'wheel'] as const)
    addEventListener(kind, tell, { capture: true, passive: true });
}
