/** A client's record as its owner made it; the vault looks at id and version alone. */
export type ClientJson = Readonly<Record<string, unknown>> & { readonly id: string; readonly version: number };

/**
 * In which way a record is not whole: its bytes were changed; it was cut; nothing is left in its place; the place is gone; an older
 * version or another record stands there; a record stands there that the index does not know.
 */
export const damageKinds = ['altered', 'truncated', 'emptied', 'missing', 'exchanged', 'added'] as const;
export type DamageKind = (typeof damageKinds)[number];

/** What is whole in the vault and what is not. */
export interface VaultHealth {
  readonly whole: number;
  readonly damaged: Readonly<Record<DamageKind, number>>;
  /** Without its index a record that was taken away or put back cannot be told, and nothing is written. */
  readonly index: 'whole' | 'missing' | 'damaged';
  /** When it was last written, ISO 8601: a whole file of an earlier day is no damage, and told by this alone. */
  readonly writtenAt?: string;
}

/** A copy of a vault as plain JSON, from one moment; bytes are base64. It is sealed: by a passphrase, or by `key` that lies beside it. */
export interface SealedClients {
  readonly format: number;
  readonly wraps: readonly {
    readonly id: string;
    readonly kind: 'passphrase';
    readonly form: number;
    readonly n: number;
    readonly r: number;
    readonly p: number;
    readonly salt: string;
    readonly sealedSecret: string;
  }[];
  /** Missing in a copy of a vault from an earlier program that nobody has opened since. */
  readonly index?: string;
  readonly rows: readonly { readonly row: string; readonly body: string }[];
  readonly key?: string;
}

/** What was taken out with a client: the record, and what lay half typed. */
export interface RemovedClient {
  readonly record: ClientJson;
  readonly drafts: ClientJson | undefined;
}

/** How many clients a copy brought: new ones, the same as those that stand, and others under the same id, which were left out. */
export interface Restored {
  readonly added: number;
  readonly same: number;
  readonly conflicts: number;
  /** Records of the copy that are not whole; beside others they are left out. */
  readonly damaged: number;
  /** Of how many clients who stand the copy had other half-typed things, which were left out; missing where of none. */
  readonly draftsLeftOut?: number;
}

/**
 * What the use cases ask of the place that keeps client records, apart from the shelf. A write resolves only when it will
 * survive a power cut. Without the passphrase nobody can read what was written under it: losing it loses the records.
 */
export interface ClientVault {
  /** 'open' with or without a passphrase; 'locked' until it is given. */
  state(): 'open' | 'locked';
  hasPassphrase(): boolean;
  /** Tells each time when it was locked or opened; the answer ends it. */
  watch(listener: () => void): () => void;
  /** Tries are looked at one after the other, each after the pause of the wrong ones before. @throws Fault passphrase-wrong, passphrase-tries-waiting */
  unlock(passphrase: string): Promise<void>;
  /** Milliseconds until the next try of a passphrase is looked at. */
  waitMilliseconds(): number;
  /** Forgets the keys. Without a passphrase there is nothing to lock. */
  lock(): void;
  /** After how many minutes without a key or a pointer it is to be locked. */
  idleMinutes(): number;
  /** @throws Fault clients-locked, request-not-valid beyond 1 to 120 */
  setIdleMinutes(minutes: number): void;
  /**
   * Sets, changes or takes off the passphrase; everything is written anew under a new key, all or nothing. It leaves the
   * vault open. `current` is not looked at when there is no passphrase.
   * @throws Fault passphrase-wrong, passphrase-tries-waiting, passphrase-too-short, passphrase-too-common, client-record-damaged
   */
  changePassphrase(current: string | undefined, next: string | undefined): Promise<void>;
  /** Every record that is whole, by id; `health` counts the others. @throws Fault clients-locked */
  list(): Promise<readonly ClientJson[]>;
  /** @throws Fault clients-locked, client-record-damaged */
  get(id: string): Promise<ClientJson | undefined>;
  /**
   * Keeps a record with its version raised by one and gives it back. `seenVersion` null means "new".
   * @throws Fault clients-locked, changed-meanwhile, client-record-damaged
   */
  put(record: ClientJson, seenVersion: number | null): Promise<ClientJson>;
  /** Leaves nothing of the record on disk, nor of its drafts. @throws Fault clients-locked, changed-meanwhile, client-record-damaged */
  remove(id: string, seenVersion: number): Promise<RemovedClient>;
  /** Keeps a removed client again, the record's version going on. @throws Fault clients-locked, changed-meanwhile when one of its id stands */
  bringBack(removed: RemovedClient): Promise<ClientJson>;
  /**
   * What lies half typed about a client: sealed, copied and erased with the record, and in no list or export of records.
   * @throws Fault clients-locked, client-not-found, client-record-damaged
   */
  drafts(clientId: string): Promise<ClientJson | undefined>;
  /** The same of every client. @throws Fault clients-locked */
  allDrafts(): Promise<readonly ClientJson[]>;
  /**
   * Keeps what `change` makes of the drafts that stand, and gives it back; nothing comes between. Undefined leaves them as they are.
   * @throws Fault as `drafts` does, and what `change` throws
   */
  changeDrafts<Kept extends ClientJson | undefined>(clientId: string, change: (standing: ClientJson | undefined) => Kept): Promise<Kept>;
  /** @throws Fault clients-locked */
  health(): Promise<VaultHealth>;
  /**
   * Moves what is not whole into a file of its own in the same folder, sealed as it is, and makes the index anew over what is whole.
   * Gives the number of records and the file's name. @throws Fault clients-locked
   */
  setAside(): Promise<{ readonly records: number; readonly file: string | undefined }>;
  /** Every record, by id: all of them or none. @throws Fault clients-locked, client-record-damaged */
  exportAll(): Promise<readonly ClientJson[]>;
  /**
   * Erases every record and the passphrase; nothing readable is left on disk. `passphrase` is asked for while it is locked.
   * @throws Fault passphrase-wrong, passphrase-tries-waiting
   */
  eraseAll(passphrase?: string): Promise<void>;
  /** The same where the passphrase is lost: whoever calls it has asked the person plainly. */
  eraseAllUnread(): Promise<void>;
  /**
   * A copy that a passphrase opens: the vault's own where it has one, locked or not; else `passphrase`, under a key of the copy's own.
   * @throws Fault passphrase-too-short, passphrase-too-common, option-missing when neither is there
   */
  sealedCopy(passphrase?: string): Promise<SealedClients>;
  /** A copy as it stands; without a passphrase its key lies in it, so that it is to be kept as the vault itself is. */
  keyedCopy(): Promise<SealedClients>;
  /** What is in a copy, without writing. @throws Fault client-copy-not-valid, passphrase-wrong */
  lookAtCopy(
    copy: unknown,
    passphrase: string | undefined,
  ): Promise<{ readonly records: number; readonly damaged: number; readonly writtenAt?: string }>;
  /**
   * 'empty': the copy takes the place of a vault without records; under a passphrase it needs not be opened, and its passphrase holds from
   * then on. 'beside': adds clients whose id is not there; the vault is open and the copy is opened. All or nothing.
   * @throws Fault client-copy-not-valid, passphrase-wrong, clients-locked, clients-not-empty
   */
  restoreCopy(copy: unknown, passphrase: string | undefined, into: 'empty' | 'beside'): Promise<Restored>;
  close(): Promise<void>;
}
