import { setImmediate } from 'node:timers/promises';
import type { Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';

interface Progress {
  readonly what: string;
  readonly done: number;
  readonly of: number;
}

/** The long work under way, by the identity that the screen which asked for it gave it. */
export class Watches {
  private readonly underWay = new Map<string, Progress>();

  /** Undefined when no such work is under way. */
  progressOf(id: string): Progress | undefined {
    return this.underWay.get(id);
  }

  /** Runs work under a watch; it stops at its next step when the connection that asked for it is gone. */
  async run<Result>(id: string | undefined, signal: AbortSignal, work: (watch: Watch) => Promise<Result>): Promise<Result> {
    const step: Watch['step'] = async (what, done, of) => {
      if (id !== undefined) this.underWay.set(id, { what, done, of });
      await setImmediate();
      if (signal.aborted) throw new Fault('work-cancelled', 'The work was stopped before its end.');
    };
    try {
      return await work({ step });
    } finally {
      if (id !== undefined) this.underWay.delete(id);
    }
  }
}
