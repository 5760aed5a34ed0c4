import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { PostgresServer, postgresPrograms, say } from '#adapters/storage/postgresServer.fixture.ts';
import { addMarkedClients, lookForClients } from './markedClients.ts';
import { Home, Program } from './program.ts';
import type { Scenario } from './scenario.ts';
import type { Tally } from './tally.ts';
import { Writers } from './writers.ts';

/** What the program may take to answer again: it waits ten seconds for its database, and a new start of that takes some on a busy machine. */
const longestMilliseconds = 40_000;
const killsADatabase = 15;

/** The database is killed under the program that writes, by connection and whole, and now and then the program itself. */
export const postgres: Scenario = async (tally, kills) => {
  if (postgresPrograms === undefined) return tally.seen('skipped: PostgreSQL is not on this machine');
  const database = await PostgresServer.start();
  try {
    while (tally.wants(kills)) await onOneDatabase(tally, Math.min(kills, tally.kills + killsADatabase), database);
  } finally {
    database.end();
  }
};

async function onOneDatabase(tally: Tally, until: number, database: PostgresServer): Promise<void> {
  const home = new Home();
  const url = await database.newDatabase();
  const env = { PLATEWRIGHT_DATABASE_URL: url };
  let program = await Program.start(home, env);
  const clients = await addMarkedClients(program, 1);
  const writers = new Writers(tally);
  while (tally.wants(until)) {
    const ending = new AbortController();
    const writing = writers.write(program, ending.signal);
    await setTimeout(40 + 900 * tally.random());
    const isProgram = tally.random() < 0.15;
    if (isProgram) {
      await program.kill();
      ending.abort();
      tally.seen('the program');
    } else tally.seen(await hit(database, url, tally.random));
    tally.kills += 1;
    if (isProgram) program = await Program.start(home, env);
    else await answers(program, tally);
    ending.abort();
    await writing;
    await writers.compare(program, tally);
    lookForClients(home, clients, tally, program.said());
  }
  if ((await program.stop()) !== 0) tally.miss('crashed', `the program did not end well: ${program.said()}`);
  home.remove();
}

/** Waits until the program reads again. */
async function answers(program: Program, tally: Tally): Promise<void> {
  const start = performance.now();
  while (performance.now() - start < longestMilliseconds) {
    const answer = await program.call('GET', '/workspace').catch(() => undefined);
    if (answer?.status === 200) return;
    await setTimeout(50);
  }
  tally.miss('crashed', `the program does not answer after ${longestMilliseconds} ms: ${program.said()}`);
}

/** Ends a connection by its server's word, kills its process (then PostgreSQL ends all and recovers), stops the whole at once, or kills it. */
async function hit(database: PostgresServer, url: string, random: () => number): Promise<string> {
  const how = random();
  if (how < 0.2) {
    database.stop('immediate');
    database.startAgain();
    return 'postmaster stopped at once';
  }
  if (how < 0.4) {
    process.kill(Number(readFileSync(join(database.folder, 'data', 'postmaster.pid'), 'utf8').split('\n')[0]), 'SIGKILL');
    await startedAgain(database);
    return 'postmaster killed';
  }
  for (;;) {
    const rows = await say(url, `select pid from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()`).catch(
      () => [],
    );
    const pid = Number(rows[Math.floor(random() * rows.length)]?.pid ?? Number.NaN);
    if (how < 0.7 && !Number.isNaN(pid)) {
      await say(url, `select pg_terminate_backend(${pid})`);
      return 'backend terminated';
    }
    if (!Number.isNaN(pid)) {
      process.kill(pid, 'SIGKILL');
      return 'backend killed';
    }
    await setTimeout(20);
  }
}

/** Its backends end once they see that it is gone; until then it does not start. */
async function startedAgain(database: PostgresServer): Promise<void> {
  for (let tries = 0; ; tries += 1) {
    try {
      return database.startAgain();
    } catch (error) {
      if (tries >= 100) throw error;
      await setTimeout(100);
    }
  }
}
