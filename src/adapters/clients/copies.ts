import type { ClientJson, Restored } from '#app/clientVault.ts';
import { clientDraftsFromJson, draftsIdOf } from '#core/client/record/clientDrafts.ts';
import { Fault } from '#core/errors.ts';
import { isSameJson } from '#core/json/isSameJson.ts';
import { DataKey } from './dataKey.ts';
import { lookAtRows } from './lookAtRows.ts';
import { type ScryptCost, wrapKey } from './passphrase.ts';
import type { Records } from './records.ts';
import { readBy, resealed } from './rekey.ts';
import type { Copy } from './sealedCopy.ts';
import type { Row, VaultFile } from './vaultFile.ts';
import { indexOf, sealIndex } from './vaultIndex.ts';

/** The rows of a vault as they are sealed, from one moment; with the key where no passphrase opens them. */
export function copyAsItStands(file: VaultFile, ownKey: () => DataKey): Copy {
  return file.transact(() => {
    const wraps = file.wraps();
    return { wraps, sealedIndex: file.sealedIndex(), rows: file.rows(), key: wraps.length > 0 ? undefined : ownKey() };
  });
}

/** The rows of a vault sealed anew for a copy that its own passphrase opens. */
export async function copyUnder(
  passphrase: string,
  cost: ScryptCost,
  now: Date,
  rows: () => { from: DataKey; rows: readonly Row[] },
): Promise<Copy> {
  const key = DataKey.random();
  const wrap = await wrapKey(key, passphrase, cost);
  // Read only now, after the wait, and at one moment.
  const standing = rows();
  const anew = resealed(standing.rows, readBy(standing.from), key);
  const sealedIndex = sealIndex(key, indexOf(anew, 0, now));
  key.forget();
  return { wraps: [wrap], sealedIndex, rows: anew, key: undefined };
}

/** What is in an opened copy. */
export function describedCopy(key: DataKey, { sealedIndex, rows }: Copy) {
  const { index, whole, faulty } = lookAtRows(key, sealedIndex, rows);
  return {
    records: whole.length,
    damaged: faulty.length,
    ...(index.state === 'whole' ? { writtenAt: index.index.writtenAt } : {}),
  };
}

/** Adds the clients of a copy whose id is not there, with their drafts; others stay as they are and are counted. All or nothing. */
export function restoredBeside(file: VaultFile, standing: Records, key: DataKey, { sealedIndex, rows }: Copy): Restored {
  const { whole, drafts, faulty } = lookAtRows(key, sealedIndex, rows);
  return file.transact(() => {
    const others = whole.map(({ record }) => ({ record, there: standing.get(record.id) }));
    const added = others.filter(({ there }) => there === undefined).map(({ record }) => record);
    const same = others.filter(({ record, there }) => there !== undefined && isSameJson(record, there)).length;
    const draftsOfAdded = new Set(added.map(({ id }) => draftsIdOf(id)));
    const held = drafts.map(({ record }) => ({ record, there: standing.get(record.id) }));
    const brought = held.filter(({ record, there }) => draftsOfAdded.has(record.id) && there === undefined).map(({ record }) => record);
    const leftOut = held.filter(({ record, there }) => !brought.includes(record) && holdsDrafts(record) && !isSameJson(record, there));
    if (added.length > 0) standing.addAll([...added, ...brought]);
    return {
      added: added.length,
      same,
      conflicts: others.length - added.length - same,
      damaged: faulty.length,
      ...(leftOut.length === 0 ? {} : { draftsLeftOut: leftOut.length }),
    };
  });
}

/** Where all were saved or discarded nothing is left but the count of their revisions. */
function holdsDrafts(record: ClientJson): boolean {
  return clientDraftsFromJson(record).value?.drafts.length !== 0;
}

/** Puts a copy that a passphrase opens, as it is, in the place of a vault without records. */
export function restoredSealed(file: VaultFile, { sealedIndex, rows, wraps }: Copy): void {
  file.transact(() => {
    refuseFilled(file);
    for (const { row, body } of rows) file.put(row, body);
    file.putWraps(wraps);
    file.putSealedIndex(sealedIndex);
    file.needScrub();
  });
}

/** Seals a copy that came with its key anew, under the key of a vault without records. */
export function restoredKeyed(file: VaultFile, own: DataKey, key: DataKey, { rows }: Copy, now: Date): void {
  file.transact(() => {
    refuseFilled(file);
    const anew = resealed(rows, readBy(key), own);
    for (const { row, body } of anew) file.put(row, body);
    file.putSealedIndex(sealIndex(own, indexOf(anew, 1, now)));
  });
}

/** @throws Fault clients-not-empty */
function refuseFilled(file: VaultFile): void {
  if (file.rows().length > 0) throw new Fault('clients-not-empty', 'There are client records already.');
}
