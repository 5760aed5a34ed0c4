/** Kills by one seed: the program, its database and its works are ended in the middle, and what is there afterwards is looked at. */
import { archives } from './kills/export.ts';
import { imports } from './kills/import.ts';
import { migration } from './kills/migration.ts';
import { passphrases } from './kills/passphrases.ts';
import { pdf } from './kills/pdf.ts';
import { postgres } from './kills/postgres.ts';
import { restore } from './kills/restore.ts';
import { makeWorkspace, type Scenario } from './kills/scenario.ts';
import { server } from './kills/server.ts';
import { type Figures, Tally } from './kills/tally.ts';

/** The scenarios, and how many of each hundred kills are theirs. */
const scenarios: Readonly<Record<string, { readonly run: Scenario; readonly share: number }>> = {
  restore: { run: restore, share: 10 },
  export: { run: archives, share: 12 },
  server: { run: server, share: 18 },
  import: { run: imports, share: 12 },
  passphrase: { run: passphrases, share: 12 },
  postgres: { run: postgres, share: 16 },
  pdf: { run: pdf, share: 8 },
  migration: { run: migration, share: 12 },
};

export interface Killed {
  readonly figures: Readonly<Record<string, Figures>>;
  /** Each loss with its scenario and kill. */
  readonly found: readonly string[];
}

/** @param named scenarios to run, two at a time; all of them when there is none. */
export async function kills(count: number, seed: number, named: readonly string[] = []): Promise<Killed> {
  const chosen = Object.entries(scenarios).filter(([name]) => named.length === 0 || named.includes(name));
  const whole = chosen.reduce((sum, [, { share }]) => sum + share, 0);
  const workspace = await makeWorkspace();
  const tallies: Tally[] = [];
  const waiting = [...chosen];
  const inTurn = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const [name, { run, share }] = next;
      const tally = new Tally(name, seed);
      tallies.push(tally);
      const start = performance.now();
      await run(tally, Math.ceil((count * share) / whole), workspace);
      const seconds = Math.round((performance.now() - start) / 1_000);
      process.stderr.write(`${name}, ${seconds} s: ${JSON.stringify(tally.figures())}\n`);
    }
  };
  try {
    await Promise.all([inTurn(), inTurn()]);
  } finally {
    workspace.home.remove();
  }
  return {
    figures: Object.fromEntries(tallies.map(tally => [tally.scenario, tally.figures()])),
    found: tallies.flatMap(({ found }) => found),
  };
}
