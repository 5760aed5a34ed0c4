import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import type { Connections } from './connections.ts';
import { postgresql } from './engine.ts';
import type { Tables } from './schema.ts';

/**
 * Limits that end what hangs and let long work go on: a statement of an import or a purge takes seconds, and a transaction is never
 * left alone for a minute.
 */
const limits = {
  connectionTimeoutMillis: 5_000,
  statement_timeout: 300_000,
  lock_timeout: 30_000,
  idle_in_transaction_session_timeout: 60_000,
  keepAlive: true,
  keepAliveInitialDelayMillis: 10_000,
};
/** One writes, the others read; several programs share the hundred that a server has by default. */
const mostConnections = 6;
// Any number serves that is not the migrations', as long as every Platewright uses the same.
const aloneLock = 'select pg_advisory_lock(7036412)';

export function postgresConnections(url: string): Connections {
  const all = openPool(url, mostConnections);
  const db = new Kysely<Tables>({ dialect: new PostgresDialect({ pool: all }) });
  return {
    engine: postgresql,
    place: { engine: 'postgresql', url },
    writer: db,
    reader: db,
    longReader: () => new Kysely<Tables>({ dialect: new PostgresDialect({ pool: openPool(url, 1) }) }),
    oneMoment: one => one.transaction().setIsolationLevel('repeatable read').setAccessMode('read only'),
    alone: work => alone(url, work),
    close: () => db.destroy(),
  };
}

function openPool(connectionString: string, max: number): pg.Pool {
  const pool = new pg.Pool({ connectionString, max, ...limits });
  // A connection may break while it is idle, or between two statements of a transaction: that must not end the program. The next
  // statement says what is wrong.
  pool.on('error', () => undefined);
  pool.on('connect', client => client.on('error', () => undefined));
  return pool;
}

/** The lock goes with its connection, also when the program is killed. */
async function alone(url: string, work: () => Promise<void>): Promise<void> {
  const client = new pg.Client({ connectionString: url, keepAlive: true });
  client.on('error', () => undefined);
  await client.connect();
  try {
    await client.query(aloneLock);
    await work();
  } finally {
    await client.end();
  }
}
