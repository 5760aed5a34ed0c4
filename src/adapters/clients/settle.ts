import { Fault } from '#core/errors.ts';
import { DataKey } from './dataKey.ts';
import { type KeyFile, keyFileName } from './keyFile.ts';
import { LockedMark } from './lockedMark.ts';
import { plainRecord, rekey } from './rekey.ts';
import { isVaultBeside, isVaultThere, makeFolder, makeVault, putVaultInPlace, vaultFileName } from './vaultDatabase.ts';
import { VaultFile } from './vaultFile.ts';
import { emptyIndex, readIndex, sealIndex } from './vaultIndex.ts';

/*
 * What stands on disk, in which order it changes, and what the next start makes of a program that was ended between two steps.
 *
 *   set a passphrase    1 one transaction: everything sealed anew under a new key, its wrap, "needs scrub"
 *                       2 clients.key is written over and removed   3 scrub
 *     ended before 1's commit: the old key still opens everything. After it: there is a wrap, so the next start removes the key and scrubs.
 *   take it off         1 clients.key with a new key   2 one transaction: everything sealed anew under it, no wrap   3 scrub
 *     ended before 2's commit: there is a wrap, so the next start removes the key, which opens nothing. After it: the key opens everything.
 *   a new vault         1 the file, beside   2 clients.key   3 the file renamed into its place
 *     ended before 2: the next start begins again. After it: it puts the file in its place. A key with neither file: the file was taken away.
 *   erase               with a wrap as "take it off", without one under the key that stands; the records go within the transaction
 *   upgrade from 1      without a passphrase: 1 clients.key  2 one transaction  3 scrub; with one: the head alone, the rest when it is opened
 *
 * So where there is a wrap, clients.key opens nothing and goes; where there is none, it opens the vault. A wrap beside a key that opens the
 * index was put there by somebody else: none of the steps leaves both. The key is then the only one, and stays.
 *
 * clients.locked stands while there is a wrap. It is put right after each of these steps and at each start; with it and without the file,
 * the file was taken away.
 */

/** Opens or makes the file of a folder and brings it to rest. The key is missing while a passphrase holds it. @throws Fault clients-file-damaged */
export function settle(folder: string, keyFile: KeyFile, now: Date): { readonly file: VaultFile; readonly key: DataKey | undefined } {
  const mark = new LockedMark(folder);
  if (!isVaultThere(folder)) {
    if (mark.isThere() && !keyFile.isThere()) throw missing('a passphrase was set on it');
    makeIn(folder, keyFile, now);
  }
  const file = new VaultFile(folder);
  try {
    if (file.format() === 1) upgrade(file, keyFile, now);
    else file.raiseFormat();
    const hasWrap = file.wraps().length > 0 && !dropForeignWraps(file, keyFile);
    if (hasWrap) keyFile.remove();
    mark.put(hasWrap);
    if (file.needsScrub()) file.scrub();
    else file.cutLog();
    if (hasWrap) return { file, key: undefined };
    const key = keyFile.read();
    if (key === undefined)
      throw new Fault('clients-file-damaged', `${keyFileName}, the key of the client records, is missing: without it they do not open.`);
    return { file, key };
  } catch (error) {
    file.close();
    throw error;
  }
}

/**
 * Whether the key file holds after all, so that the wraps went: they open nothing that the key does not.
 * @throws Fault clients-file-damaged when the key opens records but not the index: nobody can tell which of the two is to stay
 */
function dropForeignWraps(file: VaultFile, keyFile: KeyFile): boolean {
  const key = keyFile.readWhole();
  if (key === undefined) return false;
  try {
    if (readIndex(key, file.sealedIndex()).state === 'whole') {
      file.transact(() => file.putWraps([]));
      return true;
    }
    if (file.rows().some(({ row, body }) => key.fromBody(row, body) !== undefined))
      throw new Fault('clients-file-damaged', `${keyFileName} opens client records that are said to be under a passphrase.`);
    return false;
  } finally {
    key.forget();
  }
}

function makeIn(folder: string, keyFile: KeyFile, now: Date): void {
  makeFolder(folder);
  if (!keyFile.isThere()) {
    const key = DataKey.random();
    makeVault(folder, sealIndex(key, emptyIndex(now)));
    keyFile.write(key);
    key.forget();
  } else if (!isVaultBeside(folder)) throw missing('its key is still there');
  putVaultInPlace(folder);
}

function missing(why: string): Fault {
  return new Fault('clients-file-damaged', `${vaultFileName}, the file of client records, is missing: ${why}.`);
}

/** Form 1 had records in clear, or sealed without an index. */
function upgrade(file: VaultFile, keyFile: KeyFile, now: Date): void {
  const lock = file.lockOfFormat1();
  if (lock !== undefined) {
    file.transact(() => {
      file.becomePresent();
      file.putWraps([lock]);
    });
    return;
  }
  const key = DataKey.random();
  keyFile.write(key);
  file.transact(() => {
    file.becomePresent();
    rekey(file, plainRecord, key, [], now);
  });
  key.forget();
}
