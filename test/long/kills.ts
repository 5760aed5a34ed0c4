/** Kills by one seed: the program, its database and its works are ended in the middle, and what is there afterwards is looked at. */
import { archives } from './kills/export.ts';
import { imports } from './kills/import.ts';
import { migration } from './kills/migration.ts';
import { passphrases } from './kills/passphrases.ts';
import { pdf } from './kills/pdf.ts';
import { restore } from './kills/restore.ts';
import { makeWorkspace, type Scenario } from './kills/scenario.ts';
import { server } from './kills/server.ts';
import { type Figures, Tally } from './kills/tally.ts';

/** The scenarios, and how many of each hundred kills are theirs. */
const scenarios: Readonly<Record<string, { readonly run: Scenario; readonly share: number }>> = {
  server: { run: server, share: 16 },
  import: { run: imports, share: 12 },
  passphrase: { run: passphrases, share: 11 },
  restore: { run: restore, share: 15 },
  export: { run: archives, share: 12 },
  migration: { run: migration, share: 12 },
  pdf: { run: pdf, share: 8 },
};
export const scenarioNames: readonly string[] = Object.keys(scenarios);

export interface Killed {
  readonly figures: Readonly<Record<string, Figures>>;
  /** Each loss with its scenario and kill. */
  readonly found: readonly string[];
}

/** @param named scenarios to run; all of them when there is none. */
export async function kills(count: number, seed: number, named: readonly string[] = []): Promise<Killed> {
  const chosen = Object.entries(scenarios).filter(([name]) => named.length === 0 || named.includes(name));
  const whole = chosen.reduce((sum, [, { share }]) => sum + share, 0);
  const workspace = await makeWorkspace();
  const figures: Record<string, Figures> = {};
  const found: string[] = [];
  try {
    for (const [name, { run, share }] of chosen) {
      const tally = new Tally(name, seed);
      const start = performance.now();
      await run(tally, Math.ceil((count * share) / whole), workspace);
      figures[name] = tally.figures();
      found.push(...tally.found);
      const seconds = Math.round((performance.now() - start) / 1_000);
      process.stderr.write(`${name}, ${seconds} s: ${JSON.stringify(figures[name])}\n`);
    }
  } finally {
    workspace.home.remove();
  }
  return { figures, found };
}
