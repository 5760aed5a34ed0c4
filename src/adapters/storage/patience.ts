import { setTimeout } from 'node:timers/promises';

const firstPauseMilliseconds = 20;
const longestPauseMilliseconds = 250;

/** Tries until it works, what stands in the way will not pass by itself, or the time (of `performance.now()`) has come to give up. */
export async function patiently<Result>(
  attempt: () => Promise<Result>,
  mayPass: (error: unknown) => boolean,
  giveUpAt: number,
): Promise<Result> {
  for (let pause = firstPauseMilliseconds; ; pause = Math.min(2 * pause, longestPauseMilliseconds)) {
    try {
      return await attempt();
    } catch (error) {
      if (!mayPass(error) || performance.now() + pause > giveUpAt) throw error;
      await setTimeout(pause);
    }
  }
}
