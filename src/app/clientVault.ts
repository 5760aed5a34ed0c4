/** A client's record as its owner made it; the vault looks at id and version alone. */
export type ClientJson = Readonly<Record<string, unknown>> & { readonly id: string; readonly version: number };

/**
 * What the use cases ask of the place that keeps client records, apart from the shelf. A write resolves only when it will
 * survive a power cut. Without the passphrase nobody can read what was written under it: losing it loses the records.
 */
export interface ClientVault {
  /** 'open' with or without a passphrase; 'locked' until it is given. */
  state(): 'open' | 'locked';
  hasPassphrase(): boolean;
  /** Does nothing when there is no passphrase. After wrong tries the answer takes longer. @throws Fault passphrase-wrong */
  unlock(passphrase: string): Promise<void>;
  /** Forgets the keys. Without a passphrase there is nothing to lock. */
  lock(): void;
  /**
   * Sets, changes or takes off the passphrase; everything is written anew under a new key, all or nothing. It leaves the
   * vault open. `current` is not looked at when there is no passphrase.
   * @throws Fault passphrase-wrong, passphrase-too-short, client-record-damaged
   */
  changePassphrase(current: string | undefined, next: string | undefined): Promise<void>;
  /** Every record that can be read, by id; `damaged` counts the others. @throws Fault clients-locked */
  list(): Promise<readonly ClientJson[]>;
  /** @throws Fault clients-locked, client-record-damaged */
  get(id: string): Promise<ClientJson | undefined>;
  /**
   * Keeps a record with its version raised by one and gives it back. `seenVersion` null means "new".
   * @throws Fault clients-locked, changed-meanwhile, client-record-damaged
   */
  put(record: ClientJson, seenVersion: number | null): Promise<ClientJson>;
  /** Leaves nothing of the record on disk. @throws Fault clients-locked, changed-meanwhile, client-record-damaged */
  remove(id: string, seenVersion: number): Promise<void>;
  /** How many records can no longer be read. @throws Fault clients-locked */
  damaged(): Promise<number>;
  /** Deletes the records that can no longer be read; gives their number. @throws Fault clients-locked */
  removeDamaged(): Promise<number>;
  /** Every record, by id: all of them or none. @throws Fault clients-locked, client-record-damaged */
  exportAll(): Promise<readonly ClientJson[]>;
  /** Erases every record and the passphrase, locked or not; nothing readable is left on disk. */
  eraseAll(): Promise<void>;
  close(): Promise<void>;
}
