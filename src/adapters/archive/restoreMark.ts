import { existsSync } from 'node:fs';
import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { RestoreMark } from '#app/archives.ts';

/** An empty file of the data folder, there while a restore is under way. */
export function restoreMark(dataFolder: string): RestoreMark {
  const path = join(dataFolder, 'restore-under-way');
  const wasLeft = existsSync(path);
  let isLeft = wasLeft;
  return {
    isUnderWay: () => isLeft,
    begin: () => writeFile(path, '', { mode: 0o600, flush: true }),
    end: async () => {
      await rm(path, { force: true });
      isLeft = false;
    },
  };
}
