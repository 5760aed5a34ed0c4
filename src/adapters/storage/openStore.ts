import { mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { Kysely, PostgresDialect, SqliteDialect } from 'kysely';
import pg from 'pg';
import type { Store } from '#app/store.ts';
import { type Engine, postgresql, sqlite } from './engine.ts';
import { storageFault } from './faults.ts';
import { migrate } from './migrate.ts';
import type { Tables } from './schema.ts';
import { sqlStore } from './sqlStore.ts';

/** The driver's own wait blocks the program, so it is short; `Session` waits longer, without blocking. */
const busyMilliseconds = 20;

/** Where a store is: plain data, so that another thread can open the same one. */
export type StorePlace = { readonly engine: 'sqlite'; readonly folder: string } | { readonly engine: 'postgresql'; readonly url: string };

export function openStoreAt(place: StorePlace, now?: () => Date): Promise<Store> {
  return place.engine === 'sqlite' ? openSqliteStore(place.folder, now) : openPostgresStore(place.url, now);
}

/** Where the store is: PLATEWRIGHT_DATABASE_URL names a PostgreSQL database, else PLATEWRIGHT_DATA or the user's data folder a SQLite file. */
export function placeFromEnvironment(env: Readonly<Record<string, string | undefined>>): StorePlace {
  const url = env.PLATEWRIGHT_DATABASE_URL;
  return url === undefined || url === '' ? { engine: 'sqlite', folder: dataFolder(env) } : { engine: 'postgresql', url };
}

/** The folder that keeps the user's data, by the custom of each platform; PLATEWRIGHT_DATA moves it. */
export function dataFolder(
  env: Readonly<Record<string, string | undefined>>,
  platform: NodeJS.Platform = process.platform,
  home = homedir(),
): string {
  if (env.PLATEWRIGHT_DATA) return env.PLATEWRIGHT_DATA;
  if (platform === 'win32') return join(env.APPDATA ?? join(home, 'AppData', 'Roaming'), 'Platewright');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Platewright');
  return join(env.XDG_DATA_HOME || join(home, '.local', 'share'), 'platewright');
}

/**
 * Opens the SQLite file of a folder, makes both when they are missing, and migrates. Write-ahead log with full sync: an
 * acknowledged write survives a power cut. `mostPages` bounds the file as a full disk would (for tests).
 * @throws Fault database-locked, database-read-only, database-full, database-ahead
 */
export async function openSqliteStore(folder: string, now: () => Date = () => new Date(), mostPages?: number): Promise<Store> {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const file = new SqliteDatabase(join(folder, 'platewright.sqlite'), { timeout: busyMilliseconds });
    try {
      for (const pragma of ['journal_mode = wal', 'synchronous = full', 'foreign_keys = on', 'secure_delete = on']) file.pragma(pragma);
      if (mostPages !== undefined) file.pragma(`max_page_count = ${Math.ceil(mostPages)}`);
      return await opened(new Kysely<Tables>({ dialect: new SqliteDialect({ database: file }) }), sqlite, now);
    } catch (error) {
      file.close();
      throw error;
    }
  } catch (error) {
    throw storageFault(error);
  }
}

/** @throws Fault database-unreachable, database-ahead @internal */
export async function openPostgresStore(url: string, now: () => Date = () => new Date()): Promise<Store> {
  const pool = new pg.Pool({ connectionString: url, max: 4, connectionTimeoutMillis: 5_000 });
  // A connection that breaks while it is idle must not end the program: the next query says what is wrong.
  pool.on('error', () => undefined);
  try {
    return await opened(new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) }), postgresql, now);
  } catch (error) {
    await pool.end();
    throw storageFault(error);
  }
}

async function opened(db: Kysely<Tables>, engine: Engine, now: () => Date): Promise<Store> {
  await migrate(db, engine);
  return sqlStore(db, now, () => db.destroy());
}
