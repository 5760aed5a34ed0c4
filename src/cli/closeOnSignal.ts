import { constants } from 'node:os';

const longestMs = 2_500;

/** A launcher passes on what the terminal has sent already: what comes sooner after the first is the same Ctrl-C. */
const sameMs = 500;

/**
 * A signal closes everything and ends with 0, since that is how the program is meant to end. A second one ends at once; so does the
 * time, should something not close: what was acknowledged is on the disk.
 */
export function closeOnSignal(close: () => Promise<void>): void {
  let since: number | undefined;
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    const atOnce = (): never => process.exit(128 + constants.signals[signal]);
    process.on(signal, () => {
      if (since === undefined) {
        since = performance.now();
        setTimeout(atOnce, longestMs);
        close().then(() => process.exit(0), atOnce);
      } else if (performance.now() - since > sameMs) atOnce();
    });
  }
}
