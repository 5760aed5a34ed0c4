import { existsSync, readdirSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { handout, lookForClients } from './markedClients.ts';
import { Home, Program } from './program.ts';
import type { Scenario } from './scenario.ts';
import { Work } from './work.ts';

/** A browser may take a moment to see that its pipe has ended. */
const longestMilliseconds = 5_000;

/** The PDF of a client's handout is made and the program killed: its browser ends too, and the next start sweeps what it left. */
export const pdf: Scenario = async (tally, kills, workspace) => {
  const home = new Home();
  home.take(workspace.home);
  const [id] = workspace.clients;
  let program = await Program.start(home);
  const print = () => program.call('POST', `/clients/${id}/handout-paper`, { handout });
  const work = new Work(tally);
  await print();
  await work.measured(print);
  let longest = 0;
  while (tally.wants(kills)) {
    const answer = await work.killed(program, print);
    if (answer !== undefined && answer.body.subarray(0, 4).toString('latin1') !== '%PDF') tally.miss('half', 'what was made is no PDF');
    if (home.processes().length > 0) tally.seen('a browser was running');
    const start = performance.now();
    while (home.processes().length > 0 && performance.now() - start < longestMilliseconds) await setTimeout(20);
    longest = Math.max(longest, Math.round(performance.now() - start));
    const left = home.processes();
    if (left.length > 0) tally.miss('leftBehind', `${left.length} processes of the browser after ${longestMilliseconds} ms`);
    for (const one of left) process.kill(one, 'SIGKILL');
    lookForClients(home, workspace.clients, tally, program.said());
    if (profiles(home).length > 0) tally.seen('a profile was left for the next start');
    program = await Program.start(home);
    for (const profile of profiles(home)) tally.miss('leftBehind', `the next start left ${profile}`);
    lookForClients(home, workspace.clients, tally, program.said());
  }
  process.stderr.write(`pdf: a browser outlived its program by ${longest} ms at most\n`);
  await program.stop();
  home.remove();
};

function profiles(home: Home): readonly string[] {
  return existsSync(home.temporary) ? readdirSync(home.temporary).filter(name => name.startsWith('platewright-pdf-')) : [];
}
