import { Kysely, PostgresDialect, sql } from 'kysely';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { earlierRows } from './contract/earlierContract.ts';
import { postgresql } from './engine.ts';
import { migrate, migrationsOf } from './migrate.ts';
import { openPostgresStore } from './openStore.ts';
import { PostgresServer, postgresPrograms, say } from './postgresServer.fixture.ts';
import { insertRows } from './rowsOfTable.ts';
import type { Tables } from './schema.ts';
import { storeContract } from './storeContract.ts';
import { tables } from './tables.ts';

describe.skipIf(postgresPrograms === undefined)('PostgreSQL (skipped where its programs initdb and pg_ctl are missing)', () => {
  let server: PostgresServer;
  let url = '';

  beforeAll(async () => {
    server = await PostgresServer.start();
  }, 60_000);
  afterAll(() => server?.end(), 180_000);

  async function newDatabase(): Promise<void> {
    url = await server.newDatabase();
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
    sql: async statement => {
      await say(url, statement);
    },
  });

  test('[STO-11] a server that is not there, and a database that is not there, are told', async () => {
    await expect(openPostgresStore('postgresql://postgres@127.0.0.1:1/nothing')).rejects.toMatchObject({ code: 'database-unreachable' });
    await expect(openPostgresStore(`${server.url}/nothing`)).rejects.toMatchObject({ code: 'database-unreachable' });
  });

  test('[STO-10] two programs that start at once migrate once', async () => {
    await say(`${server.url}/postgres`, 'create database together');
    const stores = await Promise.all([openPostgresStore(`${server.url}/together`), openPostgresStore(`${server.url}/together`)]);
    for (const store of stores) expect(await store.counts()).toMatchObject({ foods: 0 });
    for (const store of stores) await store.close();
  });
});
