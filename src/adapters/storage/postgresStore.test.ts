import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Kysely, PostgresDialect, sql } from 'kysely';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { earlierRows } from './contract/earlierContract.ts';
import { postgresql } from './engine.ts';
import { migrate, migrationsOf } from './migrate.ts';
import { openPostgresStore } from './openStore.ts';
import { insertRows } from './rowsOfTable.ts';
import type { Tables } from './schema.ts';
import { storeContract } from './storeContract.ts';
import { tables } from './tables.ts';

/** The folder of PostgreSQL's programs on this machine; undefined where there is none. */
function postgresPrograms(): string | undefined {
  const versions = existsSync('/usr/lib/postgresql') ? readdirSync('/usr/lib/postgresql').sort((a, b) => Number(b) - Number(a)) : [];
  const folders = [...versions.map(version => `/usr/lib/postgresql/${version}/bin`), ...(process.env.PATH ?? '').split(':')];
  return folders.find(folder => existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'pg_ctl')));
}

const programs = postgresPrograms();
const isRoot = process.getuid?.() === 0;

/** PostgreSQL refuses to run as root, so its programs run as the user that Debian makes for it. */
function run(program: string, ...given: string[]): void {
  const command = [join(programs!, program), ...given];
  const [file, ...rest] = isRoot ? ['runuser', '-u', 'postgres', '--', ...command] : command;
  execFileSync(file!, rest, { stdio: ['ignore', 'ignore', 'pipe'], cwd: '/' });
}

function freePort(): Promise<number> {
  return new Promise(found => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => found(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

describe.skipIf(programs === undefined)('PostgreSQL (skipped where its programs initdb and pg_ctl are missing)', () => {
  let folder = '';
  let server = '';
  let databases = 0;
  let url = '';

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'platewright-postgres-'));
    chmodSync(folder, 0o755);
    const data = join(folder, 'data');
    mkdirSync(data);
    if (isRoot) execFileSync('chown', ['postgres', folder, data]);
    const port = await freePort();
    run('initdb', '-D', data, '-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--no-sync');
    // A database for each test: what would survive a power cut is PostgreSQL's own affair, and waiting for the disk takes minutes.
    const options = `-p ${port} -k ${folder} -c listen_addresses=127.0.0.1 -c fsync=off -c full_page_writes=off`;
    run('pg_ctl', '-D', data, '-w', '-l', join(folder, 'log'), '-o', options, 'start');
    server = `postgresql://postgres@127.0.0.1:${port}`;
  }, 60_000);
  afterAll(() => {
    if (server !== '') run('pg_ctl', '-D', join(folder, 'data'), '-m', 'fast', '-w', 'stop');
    rmSync(folder, { recursive: true, force: true });
  }, 60_000);

  async function say(database: string, statement: string): Promise<void> {
    const client = new pg.Client(database);
    await client.connect();
    try {
      await client.query(statement);
    } finally {
      await client.end();
    }
  }

  async function newDatabase(): Promise<void> {
    databases += 1;
    await say(`${server}/postgres`, `create database workspace_${databases}`);
    url = `${server}/workspace_${databases}`;
  }

  /** The rows of an earlier SQLite file in tables as PostgreSQL had them then. */
  async function fillAsEarlier(version: number): Promise<void> {
    const db = new Kysely<Tables>({ dialect: new PostgresDialect({ pool: new pg.Pool({ connectionString: url }) }) });
    try {
      await migrate(db, postgresql, migrationsOf(Object.values(tables)).slice(0, version));
      await sql`delete from workspace`.execute(db);
      for (const [name, rows] of Object.entries(earlierRows(version))) await insertRows(db, name, rows);
    } finally {
      await db.destroy();
    }
  }

  test("[STO-17] a character or a number that PostgreSQL cannot keep is the caller's mistake, not a broken program", async () => {
    await newDatabase();
    const store = await openPostgresStore(url);
    const nul = 'a\u0000b';
    const food = { name: 'Broth' };
    const label = {
      kind: 'read',
      printed: { market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], panel: {}, otherColumns: [] },
    } as const;
    try {
      for (const work of [
        () => store.getFood(nul),
        () => store.listFoods({ search: nul }),
        () => store.plates.put({ id: nul }, null),
        () => store.addFood({ name: nul }, label),
        () => store.addFood(food, label).then(added => store.changeFood(added.food.id, 2_147_483_648, {})),
      ])
        await expect(work()).rejects.toMatchObject({ code: 'request-not-valid' });
    } finally {
      await store.close();
    }
  });

  storeContract({
    open: async () => {
      await newDatabase();
      return openPostgresStore(url);
    },
    openEarlier: async version => {
      await newDatabase();
      await fillAsEarlier(version);
      return openPostgresStore(url);
    },
    bytesType: postgresql.types.bytes,
    openAgain: () => openPostgresStore(url),
    sql: statement => say(url, statement),
  });

  test('[STO-11] a server that is not there, and a database that is not there, are told', async () => {
    await expect(openPostgresStore('postgresql://postgres@127.0.0.1:1/nothing')).rejects.toMatchObject({ code: 'database-unreachable' });
    await expect(openPostgresStore(`${server}/nothing`)).rejects.toMatchObject({ code: 'database-unreachable' });
  });

  test('[STO-10] two programs that start at once migrate once', async () => {
    await say(`${server}/postgres`, 'create database together');
    const stores = await Promise.all([openPostgresStore(`${server}/together`), openPostgresStore(`${server}/together`)]);
    for (const store of stores) expect(await store.counts()).toMatchObject({ foods: 0 });
    for (const store of stores) await store.close();
  });
});
