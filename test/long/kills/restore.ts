import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { apart } from './apart.ts';
import { lookForClients, mark, passphrase } from './markedClients.ts';
import { Home, Program } from './program.ts';
import type { Scenario, Workspace } from './scenario.ts';
import type { Tally } from './tally.ts';
import { Work } from './work.ts';

const rows = 3_000;

interface Stands {
  readonly foods: number;
  readonly clients: number;
}
type Into = 'empty' | 'beside';

/** An archive comes back, into an empty workspace, beside another one and by itself on a thread, and the program is killed. */
export const restore: Scenario = async (tally, kills, workspace) => {
  const archive = await archiveOf(workspace);
  const home = new Home();
  const one = { tally, home, archive, ids: workspace.clients };
  await throughServer('empty', kills * 0.4, one);
  await throughServer('beside', kills * 0.75, one);
  await onThread(kills, one);
  home.remove();
};

interface Setting {
  readonly tally: Tally;
  readonly home: Home;
  readonly archive: Stands & { readonly bytes: Uint8Array };
  readonly ids: readonly string[];
}

async function throughServer(into: Into, until: number, { tally, home, archive, ids }: Setting): Promise<void> {
  if (!tally.wants(until)) return;
  let program = await Program.start(home);
  const bring = async (): Promise<string> => (await program.done('POST', '/archives/brought', archive.bytes)).id;
  const putBack = (id: string, way: Into) => program.call('POST', `/archives/${id}/restore`, { into: way, withClients: true, passphrase });
  const work = new Work(tally);
  await prepare(program, into);
  const first = await bring();
  await work.measured(() => putBack(first, into));
  while (tally.wants(until)) {
    const before = await prepare(program, into);
    const id = await bring();
    const answer = await work.killed(program, () => putBack(id, into));
    lookForClients(home, ids, tally, program.said());
    program = await Program.start(home);
    const added = async (): Promise<Stands> => less(await stands(program), before);
    const { restoreBrokenOff } = await program.done('GET', '/copies');
    const there = await added();
    wholeOrNot(tally, there.foods, archive.foods, answer !== undefined);
    wholeOrNot(tally, there.clients, archive.clients, answer !== undefined);
    const isBetween = there.foods > 0 && there.clients === 0;
    if (isBetween) tally.seen('between shelf and clients');
    if (isBetween && !restoreBrokenOff) tally.miss('half', 'the shelf is back, the clients are not, and nothing says so');
    if (!restoreBrokenOff) continue;
    tally.seen('told to be broken off');
    const again = await putBack(await bring(), 'beside');
    const { foods, clients } = await added();
    const isWhole = again.status === 200 && foods === archive.foods && clients === archive.clients;
    if (!isWhole) tally.miss('lost', `the same archive beside: ${foods} foods, ${clients} clients: ${JSON.stringify(again)}`);
    if ((await program.done('GET', '/copies')).restoreBrokenOff) tally.miss('half', 'it is still told to be broken off');
  }
  await program.stop();
}

async function onThread(kills: number, { tally, home, archive, ids }: Setting): Promise<void> {
  const file = join(home.root, 'archive.zip');
  writeFileSync(file, archive.bytes);
  let milliseconds: number | undefined;
  while (tally.wants(kills)) {
    const program = await Program.start(home);
    await prepare(program, 'empty');
    await program.stop();
    const script = new URL('./restoreApart.fixture.ts', import.meta.url);
    if (milliseconds === undefined) {
      ({ milliseconds } = await apart(script, [home.data, file], home.env));
      continue;
    }
    const { isDone } = await apart(script, [home.data, file], home.env, 1.3 * milliseconds * tally.random());
    tally.kills += 1;
    tally.seen(isDone ? 'killed after' : 'killed within');
    if (isDone) tally.acknowledged += 1;
    lookForClients(home, ids, tally);
    const after = await Program.start(home);
    wholeOrNot(tally, (await stands(after)).foods, archive.foods, isDone);
    await after.stop();
  }
}

/** Makes the workspace empty, or one of other foods and another client. */
async function prepare(program: Program, into: Into): Promise<Stands> {
  await program.done('DELETE', '/workspace', { confirm: 'delete everything' });
  await program.done('DELETE', '/clients', { confirm: 'erase every client', passphrase });
  if (into === 'beside') {
    await program.done('POST', '/imports', tableOf('Other', 20));
    await program.done('POST', '/clients', { name: `${mark} beside` });
  }
  return stands(program);
}

function less(now: Stands, before: Stands): Stands {
  return { foods: now.foods - before.foods, clients: now.clients - before.clients };
}

function wholeOrNot(tally: Tally, there: number, all: number, isAcknowledged: boolean): void {
  if (there !== 0 && there !== all) tally.miss('half', `${there} of ${all}`);
  if (isAcknowledged && there !== all) tally.miss('lost', `${there} of ${all} after it was acknowledged`);
}

async function stands(program: Program): Promise<Stands> {
  const { hasPassphrase } = await program.done('GET', '/clients/lock');
  if (hasPassphrase) await program.done('POST', '/clients/lock', { open: true, passphrase });
  const { foods } = await program.done('GET', '/workspace');
  return { foods, clients: (await program.done('GET', '/clients/export')).length };
}

function tableOf(name: string, count: number): FormData {
  const lines = Array.from({ length: count }, (_, at) => `${name} ${at},many soups,240,90,${at % 500},"water, lentils, salt"`);
  const form = new FormData();
  form.set('file', new File([`name,category,servingGrams,energyKcal,sodiumMg,statement\n${lines.join('\n')}\n`], `${name}.csv`));
  return form;
}

/** Without the demo: a restore beside leaves it out. */
async function archiveOf(workspace: Workspace): Promise<Setting['archive']> {
  const home = new Home();
  home.take(workspace.home);
  const program = await Program.start(home);
  await program.done('DELETE', '/demo');
  await program.done('POST', '/imports', tableOf('Archived', rows));
  const { id } = await program.done('POST', '/archives', { withClients: true, passphrase });
  const bytes: Uint8Array = await program.done('GET', `/archives/${id}/file`);
  const kept = { ...(await stands(program)), bytes };
  await program.stop();
  home.remove();
  return kept;
}
