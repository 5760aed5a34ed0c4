import type { Answer } from './program.ts';
import type { Tally } from './tally.ts';

/**
 * What was written under which key, as far as its writer was told. A write whose answer never came may be there or not, but whole; one
 * that was refused must not be there.
 */
export class Ledger {
  private readonly acknowledged = new Map<string, string>();
  private readonly open = new Map<string, string>();
  private readonly tally: Tally;

  constructor(tally: Tally) {
    this.tally = tally;
  }

  /** @param state how the key is found when the write is done. Gives the answer when it is done, else undefined. */
  async write(key: string, state: string, send: () => Promise<Answer>): Promise<Answer | undefined> {
    this.open.set(key, state);
    let answer: Answer;
    try {
      answer = await send();
    } catch {
      return undefined;
    }
    if (answer.status === 200) {
      this.acknowledged.set(key, state);
      this.tally.acknowledged += 1;
      this.open.delete(key);
      return answer;
    }
    this.tally.seen(`told ${answer.body.code}`);
    if (answer.body.code !== 'outcome-unknown') this.open.delete(key);
    if (answer.status === 500) this.tally.miss('crashed', `${key} was answered by ${JSON.stringify(answer.body)}`);
    return undefined;
  }

  /** Holds what is found against what was told; what is found stands from then on. */
  compare(found: readonly (readonly [key: string, state: string])[]): void {
    const states = Map.groupBy(found, ([key]) => key);
    for (const [key, state] of this.acknowledged) {
      const there = states.get(key)?.map(([, one]) => one) ?? [];
      if (there.length === 0) this.tally.miss('lost', `${key}: ${state}`);
      else if (there.length === 1 && there[0] !== state && there[0] !== this.open.get(key))
        this.tally.miss('lost', `${key} is ${there[0]}, not ${state}`);
    }
    for (const [key, there] of states) {
      if (there.length > 1) this.tally.miss('doubled', `${key}: ${there.length} times`);
      const wanted = this.open.get(key);
      const isKnown = this.acknowledged.has(key) || wanted !== undefined;
      if (!isKnown) this.tally.miss('half', `${key} is there and was told not to be saved`);
      else if (!this.acknowledged.has(key) && there[0]![1] !== wanted) this.tally.miss('half', `${key} is ${there[0]![1]}, not ${wanted}`);
      this.acknowledged.set(key, there[0]![1]);
    }
    this.open.clear();
  }
}
