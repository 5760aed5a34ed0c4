import { chmodSync, closeSync, mkdirSync, openSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { storageFault } from '#adapters/storage/faults.ts';
import { Fault } from '#core/errors.ts';
import type { PassphraseLock } from './passphrase.ts';

const vaultFileName = 'clients.sqlite';

/** What this program writes; a file with a higher number was written by a newer one. */
const format = 1;

/** A program that is just ending may hold the file for a moment. */
const busyMilliseconds = 500;

export interface Row {
  readonly row: Buffer;
  readonly body: Buffer;
}

/** The SQLite file below the vault: rows of bytes and at most one lock. It knows nothing of keys or clients. */
export class VaultFile {
  private readonly db: SqliteDatabase.Database;

  /** @throws Fault database-locked, database-read-only, database-full, database-ahead, client-record-damaged */
  constructor(folder: string) {
    this.db = inWords(() => openPrivately(folder));
    try {
      this.transact(() => {
        this.db.exec(tables);
        this.db.prepare('insert or ignore into vault (id, format, needs_scrub) values (1, ?, 0)').run(format);
      });
      const found = this.header().format;
      if (found > format) throw new Fault('database-ahead', `The client records have format ${found}, this program knows ${format}.`);
      // A program that was ended between a change and its scrub has left this to us; one that was ended within a change
      // has left its unfinished pages in the log, which count for nothing and can be read all the same.
      if (this.header().needs_scrub === 1) this.scrub();
      else inWords(() => this.db.pragma('wal_checkpoint(truncate)'));
    } catch (error) {
      this.db.close();
      throw error;
    }
  }

  /** All or nothing. */
  transact<Result>(work: () => Result): Result {
    return inWords(() => this.db.transaction(work).immediate());
  }

  rows(): readonly Row[] {
    return inWords(() => this.db.prepare<[], Row>('select row, body from records').all());
  }

  body(row: Buffer): Buffer | undefined {
    return inWords(() => this.db.prepare<[Buffer], Buffer>('select body from records where row = ?').pluck().get(row));
  }

  put(row: Buffer, body: Buffer): void {
    this.db.prepare('insert into records (row, body) values (?, ?) on conflict (row) do update set body = excluded.body').run(row, body);
  }

  remove(row: Buffer): void {
    this.db.prepare('delete from records where row = ?').run(row);
    this.needScrub();
  }

  removeAll(): void {
    this.db.exec('delete from records');
    this.needScrub();
  }

  lock(): PassphraseLock | undefined {
    const { scrypt_n, scrypt_r, scrypt_p, salt, sealed_secret } = this.header();
    if (sealed_secret === null) return undefined;
    return { cost: { n: scrypt_n ?? 0, r: scrypt_r ?? 0, p: scrypt_p ?? 0 }, salt: salt ?? Buffer.alloc(0), sealedSecret: sealed_secret };
  }

  putLock(lock: PassphraseLock | undefined): void {
    this.db
      .prepare('update vault set scrypt_n = ?, scrypt_r = ?, scrypt_p = ?, salt = ?, sealed_secret = ?')
      .run(lock?.cost.n ?? null, lock?.cost.r ?? null, lock?.cost.p ?? null, lock?.salt ?? null, lock?.sealedSecret ?? null);
  }

  /**
   * Leaves nothing on disk of what was deleted or rewritten. First the pages that secure_delete has zeroed go over the old
   * ones in their places; then the file is built anew, because pages that were split keep shreds; the log is cut last.
   */
  scrub(): void {
    inWords(() => {
      this.db.pragma('wal_checkpoint(truncate)');
      this.db.exec('vacuum');
      this.db.pragma('wal_checkpoint(truncate)');
      this.db.exec('update vault set needs_scrub = 0');
    });
  }

  close(): void {
    this.db.close();
  }

  private needScrub(): void {
    this.db.exec('update vault set needs_scrub = 1');
  }

  private header(): Header {
    return inWords(() => this.db.prepare<[], Header>('select * from vault').get()!);
  }
}

interface Header {
  readonly format: number;
  readonly needs_scrub: 0 | 1;
  readonly scrypt_n: number | null;
  readonly scrypt_r: number | null;
  readonly scrypt_p: number | null;
  readonly salt: Buffer | null;
  readonly sealed_secret: Buffer | null;
}

// "without rowid": rows stand in the order of their names, which does not tell who came first.
const tables = `
  create table if not exists vault (id integer primary key check (id = 1), format integer not null, needs_scrub integer not null,
    scrypt_n integer, scrypt_r integer, scrypt_p integer, salt blob, sealed_secret blob) strict;
  create table if not exists records (row blob primary key not null, body blob not null) strict, without rowid;`;

/**
 * The file is the user's alone, and one program's: another could change the passphrase while this one writes under the old
 * key. Write-ahead log with full sync; temporary tables, which a vacuum fills with records, stay in memory.
 */
function openPrivately(folder: string): SqliteDatabase.Database {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, vaultFileName);
  try {
    // Before SQLite makes it readable to others. The log takes over the file's mode.
    closeSync(openSync(path, 'wx', 0o600));
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
    chmodSync(path, 0o600);
  }
  const db = new SqliteDatabase(path, { timeout: busyMilliseconds });
  try {
    for (const pragma of [
      'locking_mode = exclusive',
      'journal_mode = wal',
      'synchronous = full',
      'secure_delete = on',
      'temp_store = memory',
    ])
      db.pragma(pragma);
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

function inWords<Result>(work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    const code = error instanceof SqliteDatabase.SqliteError ? error.code : '';
    if (/^SQLITE_(BUSY|LOCKED)/.test(code)) throw new Fault('database-locked', 'Another program has the client records open.');
    if (/^SQLITE_(CORRUPT|NOTADB)/.test(code)) throw new Fault('client-record-damaged', 'The file of client records is damaged.');
    throw storageFault(error);
  }
}
