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
