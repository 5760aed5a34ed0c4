import type { ClientJson } from '#app/clientVault.ts';
import { Fault } from '#core/errors.ts';
import { type DataKey, isClientJson } from './dataKey.ts';
import type { Wrap } from './passphrase.ts';
import type { Row, VaultFile } from './vaultFile.ts';
import { indexOf, sealIndex } from './vaultIndex.ts';

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

/** @throws Fault client-record-damaged */
export function damagedFault(): Fault {
  return new Fault('client-record-damaged', 'It was changed outside this program or by a failing disk.');
}
