import { addMarkedClients } from './markedClients.ts';
import { Home, Program } from './program.ts';
import type { Tally } from './tally.ts';

/** Kills a real program so many times at moments of the tally's chance, and looks each time at what is there afterwards. */
export type Scenario = (tally: Tally, kills: number, workspace: Workspace) => Promise<void>;

/** A data folder with the demo and clients, to copy from. */
export interface Workspace {
  readonly home: Home;
  readonly clients: readonly string[];
}

export async function makeWorkspace(): Promise<Workspace> {
  const home = new Home();
  const program = await Program.start(home);
  const clients = await addMarkedClients(program, 3);
  await program.stop();
  return { home, clients };
}
