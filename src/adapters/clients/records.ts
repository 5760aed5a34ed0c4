import { type ClientJson, damageKinds, type RemovedClient, type VaultHealth } from '#app/clientVault.ts';
import { clientOfDrafts, draftsIdOf } from '#core/client/record/clientDrafts.ts';
import { Fault } from '#core/errors.ts';
import { recordOf } from '#core/json/recordOf.ts';
import type { DataKey } from './dataKey.ts';
import { type AsideRow, type Looked, lookAtRow, lookAtRows } from './lookAtRows.ts';
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
    const { record, isDamaged } = this.lookAt(id);
    if (isDamaged) throw damagedFault();
    return record;
  }

  /** @throws Fault client-not-found, client-record-damaged */
  drafts(clientId: string): ClientJson | undefined {
    if (this.get(clientId) === undefined) throw new Fault('client-not-found', 'The client is not in this workspace.');
    return this.get(draftsIdOf(clientId));
  }

  /** Not those of a client whose record is damaged or was set aside: they wait for it. */
  allDrafts(): readonly ClientJson[] {
    const { whole, drafts } = this.look();
    const clients = new Set(whole.map(({ record }) => record.id));
    return byId(drafts.map(({ record }) => record).filter(({ id }) => clients.has(clientOfDrafts(id)!)));
  }

  changeDrafts<Kept extends ClientJson | undefined>(clientId: string, change: (standing: ClientJson | undefined) => Kept): Kept {
    return this.file.transact(() => {
      const changed = change(this.drafts(clientId));
      if (changed !== undefined) this.addAll([{ ...changed, id: draftsIdOf(clientId) }]);
      return changed;
    });
  }

  put(record: ClientJson, seenVersion: number | null): ClientJson {
    return this.file.transact(() => {
      this.refuseUnseen(record.id, seenVersion);
      return this.keep({ ...record, version: (seenVersion ?? 0) + 1 });
    });
  }

  bringBack({ record, drafts }: RemovedClient): ClientJson {
    return this.file.transact(() => {
      this.refuseUnseen(record.id, null);
      if (drafts !== undefined) this.addAll([drafts]);
      return this.keep({ ...record, version: record.version + 1 });
    });
  }

  remove(id: string, seenVersion: number): RemovedClient {
    const removed = this.file.transact(() => {
      this.refuseUnseen(id, seenVersion);
      const record = this.get(id)!;
      // Drafts that are damaged go all the same, and cannot be brought back.
      const { record: drafts } = this.lookAt(draftsIdOf(id));
      const rows = [id, draftsIdOf(id)].map(one => this.key.rowOf(one));
      for (const row of rows) if (this.file.body(row) !== undefined) this.file.remove(row);
      this.reindex(named => {
        for (const row of rows) delete named[row.toString('hex')];
      });
      return { record, drafts };
    });
    this.file.scrub();
    return removed;
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
    const { index, whole, drafts, faulty } = this.look();
    return {
      whole: whole.length + drafts.length,
      damaged: recordOf(damageKinds, kind => faulty.filter(one => one.kind === kind).length),
      index: index.state,
      ...(index.state === 'whole' ? { writtenAt: index.index.writtenAt } : {}),
    };
  }

  /** @throws Fault clients-not-empty */
  refuseDamaged(): void {
    if (this.look().faulty.length > 0)
      throw new Fault('clients-not-empty', 'There are client records that are damaged: set them aside first.');
  }

  /** Takes what is not whole out of the file and makes the index over the rest; `write` has it in safety first. Drafts go with their client. */
  setAside(write: (faulty: readonly AsideRow[]) => string): { readonly records: number; readonly file: string | undefined } {
    const { index, whole, drafts, faulty } = this.look();
    if (faulty.length === 0 && index.state === 'whole') return { records: 0, file: undefined };
    const clients = new Set(whole.map(({ record }) => draftsIdOf(record.id)));
    const [staying, going] = [
      drafts.filter(({ record }) => clients.has(record.id)),
      drafts.filter(({ record }) => !clients.has(record.id)),
    ];
    const aside = [...faulty, ...going.map(({ row, body }) => ({ row, body, kind: 'whole' as const }))];
    const name = write(aside);
    this.file.transact(() => {
      for (const { row } of aside) this.file.remove(row);
      const generation = index.state === 'whole' ? index.index.generation + 1 : 1;
      this.file.putSealedIndex(sealIndex(this.key, indexOf([...whole, ...staying], generation, this.now())));
    });
    this.file.scrub();
    return { records: aside.length, file: name };
  }

  private lookAt(id: string): { readonly record: ClientJson | undefined; readonly isDamaged: boolean } {
    const row = this.key.rowOf(id);
    const body = this.file.body(row);
    const index = readIndex(this.key, this.file.sealedIndex());
    if (body === undefined) {
      const isMissing = index.state === 'whole' && Object.hasOwn(index.index.rows, row.toString('hex'));
      return { record: undefined, isDamaged: isMissing };
    }
    const { record } = lookAtRow(this.key, index, { row, body });
    return { record, isDamaged: record === undefined };
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
