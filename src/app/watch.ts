/** Follows long work: is told how far it is and stops it when nobody waits for it any more. */
export interface Watch {
  /**
   * Tells that `done` of `of` are done, and lets the rest of the program have its turn.
   *
   * @throws Fault work-cancelled when the work is no longer wanted.
   */
  readonly step: (what: string, done: number, of: number) => Promise<void>;
}

export const unwatched: Watch = { step: async () => undefined };

/** Rows between two steps: a step costs little, and a screen that asks sees movement. */
export const rowsAStep = 100;

/** Lets the rest of the program have its turn, in work that nobody follows. */
export function breathe(): Promise<void> {
  return new Promise(done => setImmediate(done));
}
