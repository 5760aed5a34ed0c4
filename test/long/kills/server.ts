import { setTimeout } from 'node:timers/promises';
import { lookForClients } from './markedClients.ts';
import { Home, Program } from './program.ts';
import type { Scenario } from './scenario.ts';
import { Writers } from './writers.ts';

/** Kills after which the workspace is laid aside for a fresh one: reading everything back takes longer the more there is. */
const killsAWorkspace = 12;

/** The program is killed while everything is written that it keeps; some kills fall into a start. */
export const server: Scenario = async (tally, kills, workspace) => {
  const home = new Home();
  let writers = new Writers(tally);
  home.take(workspace.home);
  let program = await Program.start(home);
  while (tally.wants(kills)) {
    const ending = new AbortController();
    const writing = writers.write(program, ending.signal);
    await setTimeout(40 + 900 * tally.random());
    await program.kill();
    tally.kills += 1;
    ending.abort();
    await writing;
    lookForClients(home, workspace.clients, tally, program.said());
    if (tally.wants(kills) && tally.random() < 0.2) {
      await Program.startAndKill(home, 100 + 2_500 * tally.random());
      tally.kills += 1;
      tally.seen('killed while it started');
      lookForClients(home, workspace.clients, tally);
    }
    program = await Program.start(home);
    await writers.compare(program, tally);
    if (tally.kills % killsAWorkspace !== 0) continue;
    await program.stop();
    home.take(workspace.home);
    writers = new Writers(tally);
    program = await Program.start(home);
  }
  await program.stop();
  home.remove();
};
