import type { ClientJson, ClientVault, RemovedClient, Restored, SealedClients, VaultHealth } from '#app/clientVault.ts';
import { Fault } from '#core/errors.ts';
import { copyAsItStands, copyUnder, describedCopy, restoredBeside, restoredKeyed, restoredSealed } from './copies.ts';
import { DataKey } from './dataKey.ts';
import { KeyFile } from './keyFile.ts';
import { LockedMark } from './lockedMark.ts';
import { refuseWeak } from './newPassphrase.ts';
import { type ScryptCost, todaysCost, unwrapAny, wrapKey } from './passphrase.ts';
import { Records } from './records.ts';
import { broughtUp, eraseRows, rekeyWhole } from './rekey.ts';
import { type Copy, copyFromJson, copyToJson } from './sealedCopy.ts';
import { writeAside } from './setAside.ts';
import { settle } from './settle.ts';
import { Tries } from './tries.ts';
import type { VaultFile } from './vaultFile.ts';

/**
 * Opens the client records of a data folder, in a file of their own, and makes it when it is missing. `cost` holds for
 * passphrases set from now on; a standing one is opened at the cost written beside it.
 * @throws Fault database-locked, database-read-only, database-full, database-ahead, clients-file-damaged
 */
export async function openClientVault(
  folder: string,
  cost: ScryptCost = todaysCost,
  now: () => Date = () => new Date(),
): Promise<ClientVault> {
  return new SqliteVault(folder, cost, now);
}

/** Who may open the vault, and when; what is in it is the work of `Records`. */
class SqliteVault implements ClientVault {
  private readonly folder: string;
  private readonly cost: ScryptCost;
  private readonly now: () => Date;
  private readonly file: VaultFile;
  private readonly keyFile: KeyFile;
  private readonly mark: LockedMark;
  private readonly tries: Tries;
  /** Undefined while locked. */
  private records: Records | undefined;
  /** Counts the times it was locked: a passphrase that was still being tried must not open it again. */
  private lockings = 0;
  private readonly listeners = new Set<() => void>();

  constructor(folder: string, cost: ScryptCost, now: () => Date) {
    this.folder = folder;
    this.cost = cost;
    this.now = now;
    this.keyFile = new KeyFile(folder);
    this.mark = new LockedMark(folder);
    const { file, key } = settle(folder, this.keyFile, now());
    this.file = file;
    this.tries = new Tries(file, now);
    this.records = key === undefined ? undefined : new Records(file, key, now);
  }

  state(): 'open' | 'locked' {
    return this.records === undefined ? 'locked' : 'open';
  }

  hasPassphrase(): boolean {
    // Here and in `idleMinutes`: a timer of the door may outlive the vault, which is closed while windows still listen.
    return this.file.isOpen() && this.file.wraps().length > 0;
  }

  watch(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }

  async unlock(passphrase: string): Promise<void> {
    const { lockings } = this;
    await this.tries.inTurn(async () => {
      if (!this.hasPassphrase()) return;
      const key = await this.tries.tried(() => unwrapAny(this.file.wraps(), passphrase));
      this.use(await broughtUp(this.file, key, passphrase, this.cost, this.now()), lockings);
    });
  }

  waitMilliseconds(): number {
    return this.tries.waitMilliseconds();
  }

  lock(): void {
    if (!this.hasPassphrase()) return;
    this.lockings += 1;
    this.use(undefined);
  }

  idleMinutes(): number {
    return this.file.isOpen() ? this.file.idleMinutes() : 0;
  }

  setIdleMinutes(minutes: number): void {
    this.opened();
    if (!Number.isInteger(minutes) || minutes < 1 || minutes > 120) throw new Fault('request-not-valid', 'The minutes go from 1 to 120.');
    this.file.putIdleMinutes(minutes);
  }

  async changePassphrase(current: string | undefined, next: string | undefined): Promise<void> {
    if (next !== undefined) refuseWeak(next);
    const { lockings } = this;
    await this.tries.inTurn(async () => {
      const isSet = this.hasPassphrase();
      if (!isSet && next === undefined) return;
      const tried = isSet ? await this.tries.tried(() => unwrapAny(this.file.wraps(), current ?? '')) : undefined;
      const to = DataKey.random();
      const wraps = next === undefined ? [] : [await wrapKey(to, next, this.cost)];
      if (next === undefined) this.keyFile.write(to);
      rekeyWhole(this.file, tried ?? this.opened().key, to, wraps, this.now());
      tried?.forget();
      if (next !== undefined) this.keyFile.remove();
      this.use(to, next === undefined ? undefined : lockings);
      this.file.scrub();
    });
  }

  async list(): Promise<readonly ClientJson[]> {
    return this.opened().list();
  }

  async get(id: string): Promise<ClientJson | undefined> {
    return this.opened().get(id);
  }

  async put(record: ClientJson, seenVersion: number | null): Promise<ClientJson> {
    return this.opened().put(record, seenVersion);
  }

  async remove(id: string, seenVersion: number): Promise<RemovedClient> {
    return this.opened().remove(id, seenVersion);
  }

  async bringBack(removed: RemovedClient): Promise<ClientJson> {
    return this.opened().bringBack(removed);
  }

  async drafts(clientId: string): Promise<ClientJson | undefined> {
    return this.opened().drafts(clientId);
  }

  async allDrafts(): Promise<readonly ClientJson[]> {
    return this.opened().allDrafts();
  }

  async changeDrafts<Kept extends ClientJson | undefined>(id: string, change: (standing: ClientJson | undefined) => Kept): Promise<Kept> {
    return this.opened().changeDrafts(id, change);
  }

  async health(): Promise<VaultHealth> {
    return this.opened().health();
  }

  async setAside(): Promise<{ readonly records: number; readonly file: string | undefined }> {
    return this.opened().setAside(rows => writeAside(this.folder, rows, this.file.sealedIndex(), this.file.wraps(), this.now()));
  }

  async exportAll(): Promise<readonly ClientJson[]> {
    return this.opened().exportAll();
  }

  async eraseAll(passphrase?: string): Promise<void> {
    await this.tries.inTurn(async () => {
      if (this.state() === 'locked') (await this.tries.tried(() => unwrapAny(this.file.wraps(), passphrase ?? ''))).forget();
      this.erase();
    });
  }

  async eraseAllUnread(): Promise<void> {
    await this.tries.inTurn(async () => this.erase());
  }

  async sealedCopy(passphrase?: string): Promise<SealedClients> {
    if (this.hasPassphrase()) return this.keyedCopy();
    if (passphrase === undefined) throw new Fault('option-missing', 'A copy of clients that have no passphrase needs one of its own.');
    refuseWeak(passphrase);
    return copyToJson(await copyUnder(passphrase, this.cost, this.now(), () => ({ from: this.opened().key, rows: this.file.rows() })));
  }

  async keyedCopy(): Promise<SealedClients> {
    return copyToJson(copyAsItStands(this.file, () => this.opened().key));
  }

  async lookAtCopy(copy: unknown, passphrase: string | undefined) {
    const read = copyFromJson(copy);
    return this.tries.inTurn(async () => describedCopy(await this.keyOfCopy(read, passphrase), read));
  }

  restoreCopy(copy: unknown, passphrase: string | undefined, into: 'empty' | 'beside'): Promise<Restored> {
    return this.tries.inTurn(async () => {
      const read = copyFromJson(copy);
      const isUnread = into === 'empty' && passphrase === undefined && read.wraps.length > 0;
      const key = isUnread ? undefined : await this.keyOfCopy(read, passphrase);
      if (into === 'beside') return restoredBeside(this.file, this.opened(), key!, read);
      this.records?.refuseDamaged();
      const brought = key === undefined ? undefined : describedCopy(key, read);
      if (read.wraps.length === 0) restoredKeyed(this.file, this.opened().key, key!, read, this.now());
      else {
        restoredSealed(this.file, read);
        this.keyFile.remove();
        this.use(key === undefined ? undefined : await broughtUp(this.file, key, passphrase!, this.cost, this.now()));
        this.file.scrub();
      }
      return { added: brought?.records ?? read.rows.length, same: 0, conflicts: 0, damaged: brought?.damaged ?? 0 };
    });
  }

  async close(): Promise<void> {
    await this.tries.close();
    if (!this.file.isOpen()) return;
    this.use(undefined);
    this.listeners.clear();
    this.file.close();
  }

  private opened(): Records {
    if (this.records === undefined) throw new Fault('clients-locked', 'The client records are locked.');
    return this.records;
  }

  /** `lockings`: as it was when the work began; locked meanwhile, it stays so. */
  private use(key: DataKey | undefined, lockings = this.lockings): void {
    if (this.records?.key !== key) this.records?.key.forget();
    const isLockedMeanwhile = this.lockings !== lockings;
    if (isLockedMeanwhile) key?.forget();
    this.records = key === undefined || isLockedMeanwhile ? undefined : new Records(this.file, key, this.now);
    for (const listener of this.listeners) listener();
    this.mark.put(this.hasPassphrase());
  }

  /** Passphrases of copies are tries like any other: a copy must not be the way around the pause. */
  private async keyOfCopy({ key, wraps }: Copy, passphrase: string | undefined): Promise<DataKey> {
    if (key !== undefined) return key;
    if (passphrase === undefined) throw new Fault('passphrase-wrong', 'The copy opens with its passphrase alone.');
    return this.tries.tried(() => unwrapAny(wraps, passphrase), 'copy');
  }

  private erase(): void {
    const isSet = this.hasPassphrase();
    const key = isSet ? DataKey.random() : this.opened().key;
    if (isSet) this.keyFile.write(key);
    eraseRows(this.file, key, this.now());
    this.use(key);
    this.file.scrub();
  }
}
