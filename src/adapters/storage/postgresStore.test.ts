import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openPostgresStore } from './openStore.ts';
import { storeContract } from './storeContract.ts';

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
    run('pg_ctl', '-D', data, '-w', '-l', join(folder, 'log'), '-o', `-p ${port} -k ${folder} -c listen_addresses=127.0.0.1`, 'start');
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

  storeContract({
    open: async () => {
      databases += 1;
      await say(`${server}/postgres`, `create database workspace_${databases}`);
      url = `${server}/workspace_${databases}`;
      return openPostgresStore(url);
    },
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
