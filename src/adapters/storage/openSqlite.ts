import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import type { Connections } from './connections.ts';
import { sqlite } from './engine.ts';
import type { Tables } from './schema.ts';
import { sqliteWriterDialect } from './sqliteWriterDialect.ts';

/** The driver's own wait blocks the program, so it is short; `Session` waits longer, without blocking. */
const busyMilliseconds = 20;

/**
 * A SQLite file in a folder, both made when they are missing: one connection writes on a thread of its own, another reads what was
 * last committed. `mostPages` bounds the file as a full disk would (for tests).
 */
export function sqliteConnections(folder: string, mostPages?: number): Connections {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const file = join(folder, 'platewright.sqlite');
  if (isMissing(file)) throw Object.assign(new Error(), { code: 'DATABASE_MISSING' });
  const writer = new Kysely<Tables>({ dialect: sqliteWriterDialect({ file, mostPages }) });
  const newReader = () => {
    const database = async () => new SqliteDatabase(file, { readonly: true, timeout: busyMilliseconds });
    return new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
  };
  const reader = newReader();
  return {
    engine: sqlite,
    place: { engine: 'sqlite', folder },
    writer,
    reader,
    longReader: newReader,
    oneMoment: db => db.transaction(),
    // The lock of the client records lets a second program into no folder.
    alone: work => work(),
    // The last to close takes the write-ahead log into the file, which a reader may not.
    close: async () => {
      await reader.destroy();
      await writer.destroy();
    },
  };
}

/** A log with writes in it and no database to belong to: SQLite would begin a new one and throw the log away. */
function isMissing(file: string): boolean {
  const size = (path: string): number => statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  return size(file) === 0 && size(`${file}-wal`) > 0;
}
