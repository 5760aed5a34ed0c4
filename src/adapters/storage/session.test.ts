import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Connections } from './connections.ts';
import { migrate } from './migrate.ts';
import { postgresConnections } from './openPostgres.ts';
import { sqliteConnections } from './openSqlite.ts';
import { PostgresServer, postgresPrograms } from './postgresServer.fixture.ts';
import { Session } from './session.ts';

/** What a session promises to those who read long and to those who write from another thread. */
function sessionContract(connect: () => Promise<Connections>): void {
  const opened = async () => {
    const connections = await connect();
    await migrate(connections.writer, connections.engine);
    return { session: new Session(connections, () => new Date()), connections };
  };
  const plate = (id: string) => ({ id, plate: '{}', version: 1, is_demo: 0 as const });

  test('[STO-21] one moment stays what it was while others write and read', async () => {
    const { session, connections } = await opened();
    try {
      await session.write(trx => trx.insertInto('plates').values(plate('a')).execute());
      const seen = await session.readOnce(async trx => {
        const before = await trx.selectFrom('plates').select('id').execute();
        await session.write(other => other.insertInto('plates').values(plate('b')).execute());
        expect(await session.read(db => db.selectFrom('plates').select('id').execute())).toHaveLength(2);
        return [before, await trx.selectFrom('plates').select('id').execute()];
      });
      expect(seen).toEqual([[{ id: 'a' }], [{ id: 'a' }]]);
      await expect(session.readOnce(trx => trx.insertInto('plates').values(plate('c')).execute())).rejects.toThrow();
      expect(await session.read(db => db.selectFrom('plates').select('id').execute())).toHaveLength(2);
    } finally {
      await connections.close();
    }
  });

  test('[STO-21] while another thread has the turn, writes wait for it', async () => {
    const { session, connections } = await opened();
    try {
      const order: string[] = [];
      const turn = session.exclusively(async () => {
        await setTimeout(50);
        order.push('other thread');
      });
      const write = session.write(async trx => {
        order.push('write');
        await trx.insertInto('plates').values(plate('a')).execute();
      });
      await Promise.all([turn, write]);
      expect(order).toEqual(['other thread', 'write']);
    } finally {
      await connections.close();
    }
  });
}

describe('a session on SQLite', () => {
  const folders: string[] = [];
  afterAll(() => {
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  });
  const connect = async () => {
    folders.push(mkdtempSync(join(tmpdir(), 'platewright-session-')));
    return sqliteConnections(folders.at(-1)!);
  };
  sessionContract(connect);

  test('[STO-21] another thread writes with a connection of its own, which the session reads', async () => {
    const connections = await connect();
    await migrate(connections.writer, connections.engine);
    const session = new Session(connections, () => new Date());
    try {
      expect(session.place).toEqual({ engine: 'sqlite', folder: folders.at(-1) });
      await session.exclusively(
        () =>
          new Promise<void>((done, failed) => {
            const code = `
              import SqliteDatabase from 'better-sqlite3';
              import { workerData } from 'node:worker_threads';
              const file = new SqliteDatabase(workerData + '/platewright.sqlite');
              file.exec("insert into plates values ('a', '{}', 1, 0)");
              file.close();`;
            const url = new URL(
              `data:text/javascript,${encodeURIComponent(code.replace("'better-sqlite3'", `'${import.meta.resolve('better-sqlite3')}'`))}`,
            );
            const worker = new Worker(url, { workerData: folders.at(-1) });
            worker.once('error', failed);
            worker.once('exit', () => done());
          }),
      );
      expect(await session.read(db => db.selectFrom('plates').select('id').execute())).toEqual([{ id: 'a' }]);
    } finally {
      await connections.close();
    }
  });
});

describe.skipIf(postgresPrograms === undefined)('a session on PostgreSQL (skipped where its programs are missing)', () => {
  let server: PostgresServer;
  beforeAll(async () => {
    server = await PostgresServer.start();
  }, 60_000);
  afterAll(() => server?.end(), 180_000);
  sessionContract(async () => postgresConnections(await server.newDatabase()));

  test('[STO-18] connections have limits that end what hangs and let long work go on', async () => {
    const connections = postgresConnections(await server.newDatabase());
    try {
      const { rows } =
        await sql`select name, setting from pg_settings where name in ('idle_in_transaction_session_timeout', 'lock_timeout', 'statement_timeout') order by name`.execute(
          connections.reader,
        );
      expect(rows).toEqual([
        { name: 'idle_in_transaction_session_timeout', setting: '60000' },
        { name: 'lock_timeout', setting: '30000' },
        { name: 'statement_timeout', setting: '300000' },
      ]);
    } finally {
      await connections.close();
    }
  });
});
