import { useSyncExternalStore } from 'react';
import type { ServedPartHeader } from '../../server/servedPart.ts';

const header: ServedPartHeader = 'platewright-browser-part';

/** The browser part that this page came with: the first that was heard of, since a page asks as soon as it stands. */
let own: string | undefined;
let isRenewed = false;
const listeners = new Set<() => void>();

/** Looks in an answer for the browser part that is served now. */
export function hearOfPart(headers: Headers): void {
  const served = headers.get(header);
  if (served === null) return;
  own ??= served;
  const isAnother = served !== own;
  if (isAnother === isRenewed) return;
  isRenewed = isAnother;
  for (const tell of listeners) tell();
}

/** Whether the program was renewed under the open page: what it asks for next may be gone. */
export function useIsRenewed(): boolean {
  return useSyncExternalStore(
    tell => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => isRenewed,
  );
}
