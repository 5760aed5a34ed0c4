import type { ClientJson } from '#app/clientVault.ts';
import { Fault } from '#core/errors.ts';
import { DataKey, isClientJson, presentForm } from './dataKey.ts';
import { lookAtRows } from './lookAtRows.ts';
import { type ScryptCost, type Wrap, wrapKey } from './passphrase.ts';
import type { Row, VaultFile } from './vaultFile.ts';
import { emptyIndex, indexOf, sealIndex } from './vaultIndex.ts';

/** Reads a row under the key that holds so far; undefined when it is no whole record. */
export type ReadRow = (row: Row) => ClientJson | undefined;

/**
 * Seals everything anew under another key, with its wraps and its index. What is no whole record is carried along as it is: sealed, told,
 * not lost. Within a transaction.
 */
export function rekey(file: VaultFile, read: ReadRow, to: DataKey, wraps: readonly Wrap[], now: Date, generation = 0): void {
  const rows = resealed(file.rows(), read, to);
  file.removeAll();
  for (const { row, body } of rows) file.put(row, body);
  file.putWraps(wraps);
  file.putSealedIndex(sealIndex(to, indexOf(rows, generation + 1, now)));
}

/** Takes everything out, and the passphrase. */
export function eraseRows(file: VaultFile, key: DataKey, now: Date): void {
  file.transact(() => {
    file.removeAll();
    file.putWraps([]);
    file.putSealedIndex(sealIndex(key, emptyIndex(now)));
  });
}

export function resealed(rows: readonly Row[], read: ReadRow, to: DataKey): readonly Row[] {
  return rows.map(one => {
    const record = read(one);
    return record === undefined ? to.carry(one.row, one.body) : { row: to.rowOf(record.id), body: to.toBody(record) };
  });
}

export function readBy(key: DataKey): ReadRow {
  return ({ row, body }) => key.fromBody(row, body);
}

/** A record of form 1 without a passphrase: JSON as it is, under its id. */
export function plainRecord({ row, body }: Row): ClientJson | undefined {
  try {
    const record: unknown = JSON.parse(body.toString());
    return isClientJson(record) && Buffer.from(record.id).equals(row) ? record : undefined;
  } catch {
    return undefined;
  }
}

/** The same for a change of the passphrase. @throws Fault client-record-damaged where not all is whole: what is damaged is to be told first */
export function rekeyWhole(file: VaultFile, from: DataKey, to: DataKey, wraps: readonly Wrap[], now: Date): void {
  file.transact(() => {
    const rows = file.rows();
    const { faulty, index } = lookAtRows(from, file.sealedIndex(), rows);
    // Form 1 had no index.
    if (from.form !== 1 && (faulty.length > 0 || index.state !== 'whole')) throw damagedFault();
    rekey(file, readBy(from), to, wraps, now);
  });
}

/** The key of the present form: what an earlier program sealed is sealed anew, with an index, when it is first opened. */
export async function broughtUp(file: VaultFile, key: DataKey, passphrase: string, cost: ScryptCost, now: Date): Promise<DataKey> {
  if (key.form === presentForm) return key;
  const to = DataKey.random();
  const wrap = await wrapKey(to, passphrase, cost);
  file.transact(() => rekey(file, readBy(key), to, [wrap], now));
  key.forget();
  file.scrub();
  return to;
}

/** @throws Fault client-record-damaged */
export function damagedFault(): Fault {
  return new Fault('client-record-damaged', 'It was changed outside this program or by a failing disk.');
}
