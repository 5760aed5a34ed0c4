import { isObject } from '#core/json/presentForm.ts';
import type { LockStatus } from '../../server/clientDoor.ts';

/** What is heard of the program: how the lock is, or nothing any more. */
export type Heard = { readonly status: LockStatus } | 'lost';

/** The program tells something every five seconds. */
const silenceMilliseconds = 12_000;
const retryMilliseconds = 2_000;

/** Listens to the program for good; a stream that breaks is opened again. */
export function hearServer(tell: (heard: Heard) => void): void {
  let lastHeard = performance.now();
  const open = (): void => {
    const events = new EventSource('/api/client-events');
    events.onmessage = ({ data }) => {
      const status = lockStatus(data);
      if (status === undefined) return;
      lastHeard = performance.now();
      tell({ status });
    };
    events.onerror = () => {
      tell('lost');
      // The browser tries again by itself, but not after an answer that was no stream.
      if (events.readyState === EventSource.CLOSED) setTimeout(open, retryMilliseconds);
    };
  };
  open();
  setInterval(() => {
    if (performance.now() - lastHeard > silenceMilliseconds) tell('lost');
  }, retryMilliseconds);
}

function lockStatus(text: unknown): LockStatus | undefined {
  if (typeof text !== 'string') return undefined;
  const read: unknown = JSON.parse(text);
  if (!isObject(read)) return undefined;
  const { state, hasPassphrase, idleMinutes, waitSeconds, wasIdle, opening } = read;
  if (state !== 'open' && state !== 'locked') return undefined;
  if (
    typeof hasPassphrase !== 'boolean' ||
    typeof idleMinutes !== 'number' ||
    typeof waitSeconds !== 'number' ||
    typeof wasIdle !== 'boolean' ||
    typeof opening !== 'string'
  )
    return undefined;
  return { state, hasPassphrase, idleMinutes, waitSeconds, wasIdle, opening };
}
