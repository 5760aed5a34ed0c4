/** Lets so many pieces of work run at once; further ones wait in the order they came, and leave when they are no longer wanted. */
export class Turns {
  private free: number;
  private readonly waiting: (() => void)[] = [];

  constructor(atOnce: number) {
    this.free = atOnce;
  }

  /** @throws the signal's reason, when it is aborted before the work's turn comes */
  async run<Result>(signal: AbortSignal, work: () => Promise<Result>): Promise<Result> {
    signal.throwIfAborted();
    if (this.free > 0) this.free -= 1;
    else await this.turn(signal);
    try {
      return await work();
    } finally {
      const next = this.waiting.shift();
      if (next === undefined) this.free += 1;
      else next();
    }
  }

  private turn(signal: AbortSignal): Promise<void> {
    return new Promise((come, failed) => {
      const leave = (): void => {
        this.waiting.splice(this.waiting.indexOf(called), 1);
        failed(signal.reason);
      };
      const called = (): void => {
        signal.removeEventListener('abort', leave);
        come();
      };
      signal.addEventListener('abort', leave, { once: true });
      this.waiting.push(called);
    });
  }
}
