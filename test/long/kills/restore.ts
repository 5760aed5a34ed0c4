import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { killedApart } from './apart.ts';
import { lookForClients, passphrase } from './markedClients.ts';
import { Home, Program } from './program.ts';
import type { Scenario, Workspace } from './scenario.ts';
import type { Tally } from './tally.ts';
import { Work } from './work.ts';

const rows = 3_000;

interface Stands {
  readonly foods: number;
  readonly clients: number;
}

/** An archive comes back, into an empty workspace, beside another one and by itself on a thread, and the program is killed. */
export const restore: Scenario = async (tally, kills, workspace) => {
  const archive = await archiveOf(workspace);
  const home = new Home();
  const file = join(home.root, 'archive.zip');
  writeFileSync(file, archive.bytes);
  const empty = await emptyWorkspace();
  for (const [into, share] of [
    ['empty', 0.45],
    ['beside', 0.8],
  ] as const)
    await throughServer(into, { tally, until: kills * share, home, archive, from: empty, ids: workspace.clients });
  let milliseconds = 0;
  while (tally.kills < kills) {
    home.take(empty);
    if (milliseconds === 0) {
      const start = performance.now();
      await killedApart('./restoreApart.fixture.ts', [home.data, file], home.env);
      milliseconds = performance.now() - start;
      home.take(empty);
    }
    const isDone = await killedApart('./restoreApart.fixture.ts', [home.data, file], home.env, milliseconds * tally.random());
    tally.kills += 1;
    tally.seen(isDone ? 'killed after' : 'killed within');
    if (isDone) tally.acknowledged += 1;
    lookForClients(home, workspace.clients, tally);
    const program = await Program.start(home);
    wholeOrNot(tally, (await stands(program)).foods, archive.foods, isDone);
    await program.stop();
  }
  empty.remove();
  home.remove();
};

interface Setting {
  readonly tally: Tally;
  readonly until: number;
  readonly home: Home;
  readonly archive: Stands & { readonly bytes: Uint8Array };
  readonly from: Home;
  readonly ids: readonly string[];
}

async function throughServer(into: 'empty' | 'beside', { tally, until, home, archive, from, ids }: Setting): Promise<void> {
  const work = new Work(tally);
  let isMeasured = false;
  while (tally.kills < until) {
    home.take(from);
    let program = await Program.start(home);
    const body = (id: string, way: string) => program.call('POST', `/archives/${id}/restore`, { into: way, withClients: true, passphrase });
    const bring = async (): Promise<string> => (await program.done('POST', '/archives/brought', archive.bytes)).id;
    const id = await bring();
    if (!isMeasured) {
      await work.measured(() => body(id, into));
      isMeasured = true;
      await program.stop();
      continue;
    }
    const answer = await work.killed(program, () => body(id, into));
    lookForClients(home, ids, tally, program.said());
    program = await Program.start(home);
    const { restoreBrokenOff } = await program.done('GET', '/copies');
    const there = await stands(program);
    wholeOrNot(tally, there.foods, archive.foods, answer !== undefined);
    wholeOrNot(tally, there.clients, archive.clients, answer !== undefined);
    const isBetween = there.foods > 0 && there.clients === 0;
    if (isBetween) tally.seen('between shelf and clients');
    if (isBetween && !restoreBrokenOff) tally.miss('half', 'the shelf is back, the clients are not, and nothing says so');
    if (restoreBrokenOff) {
      tally.seen('told to be broken off');
      const again = await body(await bring(), 'beside');
      const { foods, clients } = await stands(program);
      const isWhole = again.status === 200 && foods === archive.foods && clients === archive.clients;
      if (!isWhole) tally.miss('lost', `the same archive beside: ${again.status}, ${foods} foods, ${clients} clients`);
      if ((await program.done('GET', '/copies')).restoreBrokenOff) tally.miss('half', 'it is still told to be broken off');
    }
    await program.stop();
  }
}

function wholeOrNot(tally: Tally, there: number, all: number, isAcknowledged: boolean): void {
  if (there !== 0 && there !== all) tally.miss('half', `${there} of ${all}`);
  if (isAcknowledged && there !== all) tally.miss('lost', `${there} of ${all} after it was acknowledged`);
}

/** Demo clients, which every workspace has and a restore into an empty one removes, are not counted. */
async function stands(program: Program): Promise<Stands> {
  const { hasPassphrase } = await program.done('GET', '/clients/lock');
  if (hasPassphrase) await program.done('POST', '/clients/lock', { open: true, passphrase });
  const records: readonly { isDemo?: boolean }[] = await program.done('GET', '/clients/export');
  const { foods } = await program.done('GET', '/workspace');
  return { foods, clients: records.filter(({ isDemo }) => isDemo === false).length };
}

async function emptyWorkspace(): Promise<Home> {
  const home = new Home();
  const program = await Program.start(home);
  await program.done('DELETE', '/workspace', { confirm: 'delete everything' });
  await program.stop();
  return home;
}

async function archiveOf(workspace: Workspace): Promise<Setting['archive']> {
  const home = new Home();
  home.take(workspace.home);
  const program = await Program.start(home);
  const form = new FormData();
  const lines = Array.from({ length: rows }, (_, at) => `Archived ${at},many soups,240,90,${at % 500},"water, lentils, salt"`);
  form.set('file', new File([`name,category,servingGrams,energyKcal,sodiumMg,statement\n${lines.join('\n')}\n`], 'many.csv'));
  await program.done('POST', '/imports', form);
  const { id } = await program.done('POST', '/archives', { withClients: true, passphrase });
  const bytes: Uint8Array = await program.done('GET', `/archives/${id}/file`);
  const kept = { ...(await stands(program)), bytes };
  await program.stop();
  home.remove();
  return kept;
}
