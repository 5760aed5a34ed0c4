import type { Watch } from '#app/watch.ts';
import type { World } from './command.ts';

/** Milliseconds of silence before the first word, and between two. */
const patience = 1000;

/** Tells how far a long job is, on standard error, and says nothing about a short one. */
export function progress(world: World, what: string): (done: number, total?: number) => void {
  let last = performance.now();
  return (done, total) => {
    const now = performance.now();
    if (now - last < patience) return;
    last = now;
    world.say(`${done.toLocaleString('en-US')}${total === undefined ? '' : ` of ${total.toLocaleString('en-US')}`} ${what} done\n`);
  };
}

/** Follows the steps of long work, each kind of step with its own count. */
export function watchOn(world: World): Watch {
  const tellers = new Map<string, ReturnType<typeof progress>>();
  return {
    step: async (what, done, of) => {
      const tell = tellers.get(what) ?? progress(world, what.charAt(0).toLowerCase() + what.slice(1));
      tellers.set(what, tell);
      tell(done, of === 0 ? undefined : of);
    },
  };
}
