import { randomBytes } from 'node:crypto';
import { chmodSync, closeSync, existsSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { storageFault } from '#adapters/storage/faults.ts';
import { Fault } from '#core/errors.ts';
import { DataKey, dataKeyBytes } from './dataKey.ts';

export const keyFileName = 'clients.key';

/**
 * The data key of a vault without a passphrase, in a file of its own: the records never lie in clear, and a passphrase that is set later
 * has one small file to take away. It is there or not, never half.
 */
export class KeyFile {
  private readonly folder: string;
  private readonly path: string;

  constructor(folder: string) {
    this.folder = folder;
    this.path = join(folder, keyFileName);
  }

  isThere(): boolean {
    return existsSync(this.path);
  }

  /** Undefined when there is none. @throws Fault clients-file-damaged */
  read(): DataKey | undefined {
    return inWords(() => {
      const secret = bytesOf(this.path);
      if (secret === undefined) return undefined;
      chmodSync(this.path, 0o600);
      if (secret.length !== dataKeyBytes)
        throw new Fault('clients-file-damaged', `${keyFileName}, the key of the client records, is damaged: without it they do not open.`);
      return new DataKey(secret);
    });
  }

  /** Undefined also when it is damaged: such a key opens nothing. */
  readWhole(): DataKey | undefined {
    try {
      return this.read();
    } catch (error) {
      if (error instanceof Fault && error.code === 'clients-file-damaged') return undefined;
      throw error;
    }
  }

  write(key: DataKey): void {
    inWords(() => {
      const beside = `${this.path}.new`;
      rmSync(beside, { force: true });
      const secret = key.bytes();
      writeThrough(beside, 'wx', secret);
      secret.fill(0);
      renameSync(beside, this.path);
      syncFolder(this.folder);
    });
  }

  /** Written over before it goes; a disk that writes elsewhere may keep the old bytes, and they then open nothing that is still there. */
  remove(): void {
    inWords(() => {
      for (const path of [this.path, `${this.path}.new`]) {
        const secret = bytesOf(path);
        if (secret === undefined) continue;
        writeThrough(path, 'r+', randomBytes(secret.length));
        rmSync(path);
      }
      syncFolder(this.folder);
    });
  }
}

function bytesOf(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined;
    throw error;
  }
}

function writeThrough(path: string, flags: 'wx' | 'r+', bytes: Buffer): void {
  const file = openSync(path, flags, 0o600);
  try {
    writeSync(file, bytes);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  chmodSync(path, 0o600);
}

/** A rename or a removal is on disk only when the folder is. Windows has no such call and refuses to open a folder. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const opened = openSync(folder, 'r');
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}

function inWords<Result>(work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw storageFault(error);
  }
}
