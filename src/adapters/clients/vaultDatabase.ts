import { chmodSync, closeSync, existsSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { storageFault } from '#adapters/storage/faults.ts';
import { Fault } from '#core/errors.ts';
import { syncFolder } from './keyFile.ts';

export const vaultFileName = 'clients.sqlite';

/**
 * What this program writes; a file with a higher number was written by a newer one. Format 2 has the same tables, but no drafts: its program
 * would leave them behind where a client is erased.
 */
export const fileFormat = 3;

/** A program that is just ending may hold the file for a moment. */
const busyMilliseconds = 500;

export function isVaultThere(folder: string): boolean {
  return existsSync(join(folder, vaultFileName));
}

export function makeFolder(folder: string): void {
  inWords(() => mkdirSync(folder, { recursive: true, mode: 0o700 }));
}

/** Makes a file without records beside the place where it is to stand. */
export function makeVault(folder: string, sealedIndex: Buffer): void {
  inWords(() => {
    const beside = besidePath(folder);
    rmSync(beside, { force: true });
    closeSync(openSync(beside, 'wx', 0o600));
    const db = new SqliteDatabase(beside);
    try {
      db.exec(tables);
      db.prepare('insert into vault (id, format, needs_scrub, sealed_index) values (1, ?, 0, ?)').run(fileFormat, sealedIndex);
    } finally {
      db.close();
    }
    const file = openSync(beside, 'r+');
    fsyncSync(file);
    closeSync(file);
  });
}

/** Whole or not at all: a file that is empty later was emptied. */
export function putVaultInPlace(folder: string): void {
  inWords(() => {
    renameSync(besidePath(folder), join(folder, vaultFileName));
    syncFolder(folder);
  });
}

/** Made, and not yet in its place. */
export function isVaultBeside(folder: string): boolean {
  return existsSync(besidePath(folder));
}

function besidePath(folder: string): string {
  return join(folder, `${vaultFileName}.new`);
}

// "without rowid": rows stand in the order of their names, which does not tell who came first.
export const tables = `
  create table if not exists vault (id integer primary key check (id = 1), format integer not null, needs_scrub integer not null,
    sealed_index blob, idle_minutes integer not null default 15,
    wrong_tries integer not null default 0, pause_ms integer not null default 0, not_before_ms integer not null default 0) strict;
  create table if not exists wraps (id text primary key not null, kind text not null, form integer not null,
    scrypt_n integer not null, scrypt_r integer not null, scrypt_p integer not null, salt blob not null, sealed_secret blob not null) strict;
  create table if not exists records (row blob primary key not null, body blob not null) strict, without rowid;`;

/**
 * One program's alone: another could change the passphrase while this one writes under the old key. Write-ahead log with full sync;
 * temporary tables, which a vacuum fills with records, stay in memory. The log takes over the file's mode.
 */
export function openExclusively(folder: string): SqliteDatabase.Database {
  const path = join(folder, vaultFileName);
  inWords(() => {
    if (statSync(path).size === 0) throw new Fault('clients-file-damaged', `${vaultFileName}, the file of client records, is empty.`);
    chmodSync(path, 0o600);
  });
  return inWords(() => opened(path));
}

function opened(path: string): SqliteDatabase.Database {
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

export function inWords<Result>(work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    const code = error instanceof SqliteDatabase.SqliteError ? error.code : '';
    if (/^SQLITE_(BUSY|LOCKED)/.test(code)) throw new Fault('database-locked', 'Another program has the client records open.');
    // Our own statements are right: SQLITE_ERROR says that the tables, or the form of the file, are not those that they were written for.
    if (/^SQLITE_(CORRUPT|NOTADB|NOMEM|ERROR$)/.test(code))
      throw new Fault('clients-file-damaged', `${vaultFileName}, the file of client records, is damaged or is none.`);
    throw storageFault(error);
  }
}
