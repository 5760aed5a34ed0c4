import { setTimeout } from 'node:timers/promises';
import { Fault } from '#core/errors.ts';
import type { VaultFile } from './vaultFile.ts';

/** The first two wrong tries are slips; each further one doubles the wait, from half a second to half a minute. */
const freeWrongTries = 2;
const firstPauseMilliseconds = 500;
const longestPauseMilliseconds = 30_000;
/** A try takes a while to work out, and others wait behind it. */
const mostWaiting = 8;

/**
 * Tries of a passphrase, one after the other, with a pause before the next one that grows with each wrong one. Count and pause stand in
 * the file before a try is begun, so that neither a restart nor an end in its middle makes it free. While the program runs, the pause is
 * held by a clock that nobody can set; after a restart a clock that was set back leaves the whole pause to wait.
 */
export class Tries {
  private readonly file: VaultFile;
  private readonly now: () => Date;
  /** By `performance.now()`. */
  private notBefore: number;
  private waiting = 0;
  private last: Promise<unknown> = Promise.resolve();
  private readonly closing = new AbortController();

  constructor(file: VaultFile, now: () => Date) {
    this.file = file;
    this.now = now;
    const { pause, notBefore } = file.tries();
    this.notBefore = performance.now() + Math.min(Math.max(notBefore - now().getTime(), 0), pause);
  }

  /** Milliseconds until the next try is looked at. */
  waitMilliseconds(): number {
    return Math.max(Math.ceil(this.notBefore - performance.now()), 0);
  }

  /** What needs a key to be derived, or changes it, goes one after the other. @throws Fault passphrase-tries-waiting */
  async inTurn<Result>(work: () => Promise<Result>): Promise<Result> {
    if (this.waiting >= mostWaiting) throw new Fault('passphrase-tries-waiting', `${mostWaiting} tries are waiting for their turn.`);
    this.waiting += 1;
    const turn = this.last.then(work).finally(() => {
      this.waiting -= 1;
    });
    this.last = turn.catch(() => undefined);
    return turn;
  }

  /**
   * A try, within its turn. Only a right one of the vault's own passphrase takes the count back: whoever brings a copy knows that copy's.
   * @param open gives undefined when the passphrase was wrong. @throws Fault passphrase-wrong
   */
  async tried<Result>(open: () => Promise<Result | undefined>, of: 'vault' | 'copy' = 'vault'): Promise<Result> {
    await setTimeout(this.waitMilliseconds(), undefined, { signal: this.closing.signal }).catch(() => undefined);
    if (this.closing.signal.aborted) throw new Fault('clients-locked', 'The program is ending.');
    const { wrong } = this.file.tries();
    this.charge(wrong + 1);
    const result = await open().catch((error: unknown) => {
      this.charge(wrong);
      throw error;
    });
    // A vault without a passphrase has nothing to guess: its copies would otherwise wait for good.
    const wrongIfRight = of === 'copy' && this.file.wraps().length > 0 ? wrong : 0;
    this.charge(result === undefined ? wrong + 1 : wrongIfRight);
    if (result === undefined) throw new Fault('passphrase-wrong', this.pauseSaid());
    return result;
  }

  /** Ends what waits; resolves when the try that is being worked out has ended. */
  async close(): Promise<void> {
    this.closing.abort();
    await this.last;
  }

  private charge(wrong: number): void {
    const paid = wrong - freeWrongTries;
    const pause = paid <= 0 ? 0 : Math.min(firstPauseMilliseconds * 2 ** (paid - 1), longestPauseMilliseconds);
    this.notBefore = performance.now() + pause;
    this.file.putTries({ wrong, pause, notBefore: pause === 0 ? 0 : this.now().getTime() + pause });
  }

  private pauseSaid(): string {
    const seconds = Math.ceil(this.waitMilliseconds() / 1_000);
    if (seconds === 0) return 'The client records do not open with it.';
    return `The next try is looked at in ${seconds === 1 ? 'a second' : `${seconds} seconds`}.`;
  }
}
