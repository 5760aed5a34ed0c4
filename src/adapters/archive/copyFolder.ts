import { accessSync, constants, mkdirSync, readFileSync, statSync } from 'node:fs';
import { readdir, rename, rm, stat } from 'node:fs/promises';
import { isAbsolute, join } from 'node:path';
import { z } from 'zod';
import { writeWhole } from '#adapters/files/writeWhole.ts';
import type { CopyFolder, CopyMemory } from '#app/archives.ts';
import { Fault } from '#core/errors.ts';

const memorySchema = z.object({
  /** Where one was chosen. */
  folder: z.string().exactOptional(),
  earlierFolders: z.array(z.string()).exactOptional(),
  lastState: z.string().exactOptional(),
  lastAt: z.string().exactOptional(),
  lastFault: z.object({ at: z.string(), title: z.string(), message: z.string(), nextStep: z.string() }).exactOptional(),
});

const copyName = /^platewright-copy-(\d{4}-\d\d-\d\d)\.zip$/;
const draftName = '.platewright-copy-unfinished.zip';

/** The folder of daily copies: `copies` below the data folder, until another one is chosen. */
export function copyFolder(dataFolder: string): CopyFolder {
  const memoryFile = join(dataFolder, 'copies.json');
  const ownFolder = join(dataFolder, 'copies');
  let memory: CopyMemory = { folder: ownFolder, ...readMemory(memoryFile) };
  const pathOf = (day: string): string => join(memory.folder, `platewright-copy-${day}.zip`);
  return {
    list: async () => {
      const names = await readdir(memory.folder).catch(error => {
        if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
        throw notUsable(memory.folder);
      });
      const days = names.flatMap(name => copyName.exec(name)?.[1] ?? []);
      return Promise.all(days.map(async day => ({ day, bytes: (await stat(pathOf(day))).size })));
    },
    pathOf,
    draftPath: async () => {
      usable(memory.folder);
      const draft = join(memory.folder, draftName);
      await rm(draft, { force: true });
      return draft;
    },
    finish: (draft, day) => rename(draft, pathOf(day)),
    remove: day => rm(pathOf(day), { force: true }),
    memory: () => memory,
    remember: async next => {
      if (next.folder !== memory.folder) usable(next.folder);
      // Its own folder goes along with a data folder that is copied or moved; the place of a chosen one stays.
      const { folder, ...rest } = next;
      await writeWhole(memoryFile, JSON.stringify(folder === ownFolder ? rest : next));
      memory = next;
    },
  };
}

/** Makes the folder where it is missing. @throws Fault copies-folder-not-usable */
function usable(folder: string): void {
  try {
    if (!isAbsolute(folder)) throw notUsable(folder);
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    if (!statSync(folder).isDirectory()) throw notUsable(folder);
    accessSync(folder, constants.W_OK | constants.X_OK);
  } catch {
    throw notUsable(folder);
  }
}

function notUsable(folder: string): Fault {
  return new Fault('copies-folder-not-usable', `"${folder}" is not a folder that may be written, given from its root on.`);
}

/** A damaged memory is as good as none: it holds where copies lie, and the folder of choice is chosen again. */
function readMemory(path: string): Partial<CopyMemory> {
  try {
    return memorySchema.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    return {};
  }
}
