import type { SealedClients } from './clientVault.ts';
import type { RestoredRows, RestoreInto } from './store.ts';
import type { Watch } from './watch.ts';

/** What an archive says of itself. */
export interface ArchiveFacts {
  /** ISO 8601, UTC. */
  readonly madeAt: string;
  /** Of the program that wrote it. */
  readonly version: string;
  /** Rows by table. */
  readonly rows: Readonly<Record<string, number>>;
  /** Absent when no client records are in it. */
  readonly clients?: {
    readonly records: number;
    /** `passphrase`: they open with it alone. `key`: whoever holds the file can open them. */
    readonly opensWith: 'passphrase' | 'key';
  };
}

/** What reading a file through found, before anything is written. */
export interface ArchiveLook extends ArchiveFacts {
  /** Of the file. */
  readonly bytes: number;
  /** `workspace-file`: the JSON of a program of before the archive. */
  readonly kind: 'archive' | 'workspace-file';
  /** Values that no reader could read: they are kept as they are and passed over. */
  readonly damaged: number;
  /** As the vault reads it. */
  readonly clientsCopy?: unknown;
}

/** Archives as files. All of it is streamed on a thread of its own. */
export interface Archives {
  /**
   * Writes everything that stands at one moment to a new file, and reads it back. When that fails, no file is left.
   * @throws Fault database-full, output-not-written, work-cancelled
   */
  write(path: string, clients: SealedClients | undefined, watch: Watch): Promise<ArchiveLook>;
  /** Reads the whole file: digests, every row, every picture. @throws Fault archive-not-valid, archive-newer, file-not-found, work-cancelled */
  look(path: string, watch: Watch): Promise<ArchiveLook>;
  /** Puts the rows of a file back in one transaction. @throws as `look`, and workspace-not-empty */
  restore(path: string, into: RestoreInto, watch: Watch): Promise<RestoredRows>;
}

/** Files that lie in the data folder for a while. What a program that ended has left is swept at the next start. */
export interface WaitingFiles {
  /** A path where nothing is yet. */
  newPath(): string;
  /** Keeps a stream as a file. @throws Fault archive-not-made */
  receive(path: string, stream: AsyncIterable<Uint8Array>, bytes: number, watch: Watch): Promise<void>;
  read(path: string): ReadableStream<Uint8Array>;
  remove(path: string): Promise<void>;
}

export interface KeptCopy {
  /** yyyy-mm-dd, with -hhmmss for further ones of a day. */
  readonly day: string;
  readonly bytes: number;
  /** ISO 8601, UTC. */
  readonly madeAt: string;
  /** Whoever has it can read the client records in it. Its name says so. */
  readonly holdsKey: boolean;
  readonly path: string;
}

/** Where copies lie, and what is remembered of them from one start to the next. */
export interface CopyFolder {
  list(): Promise<readonly KeptCopy[]>;
  /** Those of this workspace in folders that were chosen before, as far as they are there. */
  earlier(): Promise<readonly KeptCopy[]>;
  /** A path beside, for a copy that is not whole yet. */
  draftPath(): Promise<string>;
  /** Gives a draft the name of its day, and tells where it is. */
  finish(draft: string, copy: Pick<KeptCopy, 'day' | 'holdsKey'>): Promise<string>;
  remove(copy: KeptCopy): Promise<void>;
  memory(): CopyMemory;
  remember(memory: CopyMemory): Promise<void>;
}

export interface CopyMemory {
  readonly folder: string;
  /** Folders of before, whose copies nobody deletes but the user. */
  readonly earlierFolders?: readonly string[];
  /** Tells one state of everything from another: no second copy is made of the same. */
  readonly lastState?: string;
  /** ISO 8601, UTC. */
  readonly lastAt?: string;
  readonly lastFault?: { readonly at: string; readonly title: string; readonly message: string; readonly nextStep: string };
}

/** Says that a restore has begun and not ended: the shelf and the client records are two files. */
export interface RestoreMark {
  /** Whether one was broken off between the shelf and the client records. */
  isBrokenOff(): boolean;
  /** One at a time. @throws Fault restore-under-way */
  begin(): Promise<void>;
  /** `half`: the shelf was written and the client records were not. `nothing`: what was there before stands. */
  end(what: 'whole' | 'half' | 'nothing'): Promise<void>;
}
