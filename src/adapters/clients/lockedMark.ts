import { closeSync, existsSync, openSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { syncFolder } from './keyFile.ts';

export const lockedMarkName = 'clients.locked';

/**
 * An empty file that stands beside client records while a passphrase holds their key. Without a key on disk nothing else would tell
 * records that were taken away from a first start. What cannot be put now is put at the next start: a lock must not fail for it.
 */
export class LockedMark {
  private readonly folder: string;
  private readonly path: string;

  constructor(folder: string) {
    this.folder = folder;
    this.path = join(folder, lockedMarkName);
  }

  isThere(): boolean {
    return existsSync(this.path);
  }

  put(isLocked: boolean): void {
    if (isLocked === this.isThere()) return;
    try {
      if (isLocked) closeSync(openSync(this.path, 'w', 0o600));
      else rmSync(this.path);
      syncFolder(this.folder);
    } catch {
      // The folder is gone, or full.
    }
  }
}
