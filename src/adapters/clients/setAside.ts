import { chmodSync, closeSync, existsSync, openSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { storageFault } from '#adapters/storage/faults.ts';
import { Fault } from '#core/errors.ts';
import { KeyFile, keyFileName, syncFolder } from './keyFile.ts';
import { LockedMark, lockedMarkName } from './lockedMark.ts';
import type { AsideRow } from './lookAtRows.ts';
import type { Wrap } from './passphrase.ts';
import { settle } from './settle.ts';
import { isVaultThere, vaultFileName } from './vaultDatabase.ts';

/**
 * Writes rows that are not whole into a file of their own, the user's alone, and gives its name. They stay sealed as they are; the wraps
 * go along, so that the passphrase of today opens what can still be opened.
 */
export function writeAside(
  folder: string,
  rows: readonly AsideRow[],
  index: Buffer | undefined,
  wraps: readonly Wrap[],
  now: Date,
): string {
  const name = freeName(folder, now, '.sqlite');
  try {
    closeSync(openSync(join(folder, name), 'wx', 0o600));
    const db = new SqliteDatabase(join(folder, name));
    try {
      db.pragma('synchronous = full');
      db.exec(`create table records (row blob not null, body blob, damage text not null) strict;
        create table wraps (id text not null, kind text not null, form integer not null, scrypt_n integer not null, scrypt_r integer not null,
          scrypt_p integer not null, salt blob not null, sealed_secret blob not null) strict;
        create table sealed_index (body blob) strict;`);
      db.transaction(() => {
        const record = db.prepare('insert into records (row, body, damage) values (?, ?, ?)');
        for (const { row, body, kind } of rows) record.run(row, body ?? null, kind);
        const wrap = db.prepare('insert into wraps values (?, ?, ?, ?, ?, ?, ?, ?)');
        for (const { id, kind, form, cost, salt, sealedSecret } of wraps)
          wrap.run(id, kind, form, cost.n, cost.r, cost.p, salt, sealedSecret);
        db.prepare('insert into sealed_index values (?)').run(index ?? null);
      })();
    } finally {
      db.close();
    }
    chmodSync(join(folder, name), 0o600);
    syncFolder(folder);
    return name;
  } catch (error) {
    throw storageFault(error);
  }
}

/**
 * Moves a file of clients that does not open out of the way, with its log and its key, so that the program starts with none. Nothing is
 * deleted. One that opens, is in use, or belongs to a newer program stays. Gives the new name; that of the key, or of the mark of a passphrase, where the file is missing.
 * @throws Fault database-locked, database-ahead, clients-file-whole
 */
export function moveAside(folder: string, now: Date): string {
  if (opens(folder, now)) throw new Fault('clients-file-whole', `${vaultFileName} opens: it was left where it is.`);
  try {
    const name = freeName(folder, now, '.sqlite');
    const bare = name.slice(0, -'.sqlite'.length);
    const moves = [
      [lockedMarkName, `${bare}.locked`],
      [keyFileName, `${bare}.key`],
      [`${vaultFileName}-wal`, `${name}-wal`],
      [`${vaultFileName}-shm`, `${name}-shm`],
      [vaultFileName, name],
    ] as const;
    const there = moves.filter(([from]) => existsSync(join(folder, from)));
    for (const [from, to] of there) {
      renameSync(join(folder, from), join(folder, to));
      chmodSync(join(folder, to), 0o600);
    }
    syncFolder(folder);
    // The file went last.
    return there.at(-1)?.[1] ?? name;
  } catch (error) {
    throw storageFault(error);
  }
}

function opens(folder: string, now: Date): boolean {
  const keyFile = new KeyFile(folder);
  if (!isVaultThere(folder) && !keyFile.isThere() && !new LockedMark(folder).isThere()) return true;
  try {
    const { file, key } = settle(folder, keyFile, now);
    key?.forget();
    file.close();
    return true;
  } catch (error) {
    if (error instanceof Fault && error.code === 'clients-file-damaged') return false;
    throw error;
  }
}

/** "clients-set-aside-2026-11-30-1412.sqlite", in the time of this computer. */
function freeName(folder: string, now: Date, ending: string): string {
  const local = new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString();
  const bare = `clients-set-aside-${local.slice(0, 10)}-${local.slice(11, 16).replace(':', '')}`;
  for (let count = 1; ; count++) {
    const stem = `${bare}${count === 1 ? '' : `-${count}`}`;
    const isFree = [ending, '.key', '.locked'].every(one => !existsSync(join(folder, `${stem}${one}`)));
    if (isFree) return `${stem}${ending}`;
  }
}
