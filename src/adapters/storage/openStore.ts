import { homedir } from 'node:os';
import { join } from 'node:path';
import type { Store } from '#app/store.ts';
import type { Connections, DatabasePlace } from './connections.ts';
import { isLost, storageFault } from './faults.ts';
import { migrate } from './migrate.ts';
import { postgresConnections } from './openPostgres.ts';
import { sqliteConnections } from './openSqlite.ts';
import { patiently } from './patience.ts';
import { Session } from './session.ts';
import { sqlStore } from './sqlStore.ts';

/** How long a start waits for a database that is starting. */
const patienceMilliseconds = 10_000;

export function openStoreAt(place: DatabasePlace, now?: () => Date): Promise<Store> {
  return place.engine === 'sqlite' ? openSqliteStore(place.folder, now) : openPostgresStore(place.url, now);
}

/** Where the store is: PLATEWRIGHT_DATABASE_URL names a PostgreSQL database, else PLATEWRIGHT_DATA or the user's data folder a SQLite file. */
export function placeFromEnvironment(env: Readonly<Record<string, string | undefined>>): DatabasePlace {
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
 * Opens the SQLite file of a folder, makes both when they are missing, and migrates. `mostPages` bounds the file as a full disk would
 * (for tests).
 * @throws Fault database-locked, database-read-only, database-full, database-ahead, database-missing, database-damaged
 */
export function openSqliteStore(folder: string, now: () => Date = () => new Date(), mostPages?: number): Promise<Store> {
  return opened(() => sqliteConnections(folder, mostPages), now);
}

/** @throws Fault database-unreachable, database-ahead */
export function openPostgresStore(url: string, now: () => Date = () => new Date()): Promise<Store> {
  return opened(() => postgresConnections(url), now);
}

async function opened(connect: () => Connections, now: () => Date): Promise<Store> {
  try {
    const connections = connect();
    try {
      await patiently(() => migrate(connections.writer, connections.engine), mayPass, performance.now() + patienceMilliseconds);
      // The reader opens now, while there is room for what it needs.
      await connections.reader.selectFrom('workspace').select('revision').execute();
      return sqlStore(new Session(connections, now), connections.close);
    } catch (error) {
      await connections.close();
      throw error;
    }
  } catch (error) {
    throw storageFault(error);
  }
}

/** Where nothing listens at the start, or a thread does not start at all, waiting helps nobody. */
function mayPass(error: unknown): boolean {
  return isLost(error) && !(error instanceof Error && 'code' in error && /^(ECONNREFUSED|THREAD_ENDED)$/.test(String(error.code)));
}
