import { type ClientJson, damageKinds, type VaultHealth } from '#app/clientVault.ts';
import { Fault } from '#core/errors.ts';
import { recordOf } from '#core/json/recordOf.ts';
import type { DataKey } from './dataKey.ts';
import { type Looked, lookAtRow, lookAtRows } from './lookAtRows.ts';
import { damagedFault } from './rekey.ts';
import type { VaultFile } from './vaultFile.ts';
import { entryOf, indexOf, readIndex, sealIndex, type VaultIndex } from './vaultIndex.ts';

/** The records of an open vault: each write goes with its index, in one transaction. */
export class Records {
  readonly key: DataKey;
  private readonly file: VaultFile;
  private readonly now: () => Date;

  constructor(file: VaultFile, key: DataKey, now: () => Date) {
    this.file = file;
    this.key = key;
    this.now = now;
  }

  look(): Looked {
    return lookAtRows(this.key, this.file.sealedIndex(), this.file.rows());
  }

  list(): readonly ClientJson[] {
    return byId(this.look().whole.map(({ record }) => record));
  }

  exportAll(): readonly ClientJson[] {
    const { whole, faulty } = this.look();
    if (faulty.length > 0) throw damagedFault();
    return byId(whole.map(({ record }) => record));
  }

  /** @throws Fault client-record-damaged */
  get(id: string): ClientJson | undefined {
    const row = this.key.rowOf(id);
    const body = this.file.body(row);
    const index = readIndex(this.key, this.file.sealedIndex());
    if (body === undefined) {
      if (index.state === 'whole' && Object.hasOwn(index.index.rows, row.toString('hex'))) throw damagedFault();
      return undefined;
    }
    const { record } = lookAtRow(this.key, index, { row, body });
    if (record === undefined) throw damagedFault();
    return record;
  }

  put(record: ClientJson, seenVersion: number | null): ClientJson {
    return this.file.transact(() => {
      this.refuseUnseen(record.id, seenVersion);
      return this.keep({ ...record, version: (seenVersion ?? 0) + 1 });
    });
  }

  bringBack(record: ClientJson): ClientJson {
    return this.file.transact(() => {
      this.refuseUnseen(record.id, null);
      return this.keep({ ...record, version: record.version + 1 });
    });
  }

  remove(id: string, seenVersion: number): void {
    this.file.transact(() => {
      this.refuseUnseen(id, seenVersion);
      const row = this.key.rowOf(id);
      this.file.remove(row);
      this.reindex(rows => delete rows[row.toString('hex')]);
    });
    this.file.scrub();
  }

  /** Keeps records as they are. Within a transaction. */
  addAll(records: readonly ClientJson[]): void {
    const added = records.map(record => ({ row: this.key.rowOf(record.id), body: this.key.toBody(record) }));
    for (const { row, body } of added) this.file.put(row, body);
    this.reindex(rows => {
      for (const { row, body } of added) rows[row.toString('hex')] = entryOf(body);
    });
  }

  health(): VaultHealth {
    const { index, whole, faulty } = this.look();
    return {
      whole: whole.length,
      damaged: recordOf(damageKinds, kind => faulty.filter(one => one.kind === kind).length),
      index: index.state,
      ...(index.state === 'whole' ? { writtenAt: index.index.writtenAt } : {}),
    };
  }

  /** Takes what is not whole out of the file and makes the index over the rest; `write` has it in safety first. */
  setAside(write: (looked: Looked) => string): { readonly records: number; readonly file: string | undefined } {
    const looked = this.look();
    if (looked.faulty.length === 0 && looked.index.state === 'whole') return { records: 0, file: undefined };
    const name = write(looked);
    this.file.transact(() => {
      for (const { row } of looked.faulty) this.file.remove(row);
      const generation = looked.index.state === 'whole' ? looked.index.index.generation + 1 : 1;
      this.file.putSealedIndex(sealIndex(this.key, indexOf(looked.whole, generation, this.now())));
    });
    this.file.scrub();
    return { records: looked.faulty.length, file: name };
  }

  private keep(record: ClientJson): ClientJson {
    this.addAll([record]);
    return this.get(record.id)!;
  }

  private reindex(change: (rows: VaultIndex['rows']) => void): void {
    const read = readIndex(this.key, this.file.sealedIndex());
    if (read.state !== 'whole')
      throw new Fault(
        'client-record-damaged',
        'The index of the client records is damaged or missing. Nothing is written before it is made anew.',
      );
    const rows = { ...read.index.rows };
    change(rows);
    const index = { generation: read.index.generation + 1, writtenAt: this.now().toISOString(), rows };
    this.file.putSealedIndex(sealIndex(this.key, index));
  }

  private refuseUnseen(id: string, seenVersion: number | null): void {
    if ((this.get(id)?.version ?? null) !== seenVersion)
      throw new Fault('changed-meanwhile', 'The client was changed in another window after it was opened here.');
  }
}

function byId(records: readonly ClientJson[]): readonly ClientJson[] {
  return records.toSorted((one, other) => (one.id < other.id ? -1 : one.id > other.id ? 1 : 0));
}
