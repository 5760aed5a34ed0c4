import { existsSync } from 'node:fs';
import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { RestoreMark } from '#app/archives.ts';
import { Fault } from '#core/errors.ts';

/** An empty file of the data folder, there while a restore is under way and after one that was broken off. */
export function restoreMark(dataFolder: string): RestoreMark {
  const path = join(dataFolder, 'restore-under-way');
  let isBrokenOff = existsSync(path);
  let isRunning = false;
  return {
    isBrokenOff: () => isBrokenOff,
    begin: async () => {
      if (isRunning) throw new Fault('restore-under-way', 'An archive is being restored by this program.');
      isRunning = true;
      await writeFile(path, '', { mode: 0o600, flush: true });
    },
    end: async what => {
      isRunning = false;
      isBrokenOff = what === 'half' || (what === 'nothing' && isBrokenOff);
      if (!isBrokenOff) await rm(path, { force: true });
    },
  };
}
