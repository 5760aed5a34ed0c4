import { setTimeout } from 'node:timers/promises';
import type { Answer, Program } from './program.ts';
import type { Tally } from './tally.ts';

/** How long a work takes that nobody kills, so that kills fall all over it: learned from the first one. */
export class Work {
  private milliseconds: number | undefined;
  private readonly tally: Tally;

  constructor(tally: Tally) {
    this.tally = tally;
  }

  /** Lets one through to its end, and remembers how long it took. */
  async measured(work: () => Promise<unknown>): Promise<void> {
    const start = performance.now();
    await work();
    this.milliseconds = performance.now() - start;
  }

  /** Does the work and kills the program somewhere within it, or shortly behind. Gives the answer when it came before. */
  async killed(program: Program, work: () => Promise<Answer>): Promise<Answer | undefined> {
    const working = work().catch(() => undefined);
    await setTimeout((this.milliseconds ?? 1_000) * 1.3 * this.tally.random());
    await program.kill();
    this.tally.kills += 1;
    const answer = await working;
    this.tally.seen(answer === undefined ? 'killed within' : 'killed after');
    if (answer?.status === 200) this.tally.acknowledged += 1;
    else if (answer !== undefined) this.tally.miss('crashed', `the work was answered by ${JSON.stringify(answer.body)}`);
    return answer?.status === 200 ? answer : undefined;
  }
}
