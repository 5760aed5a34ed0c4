import { accessSync, constants, existsSync, mkdirSync, readFileSync, statSync } from 'node:fs';
import { readdir, rename, rm, stat } from 'node:fs/promises';
import { isAbsolute, join } from 'node:path';
import { z } from 'zod';
import { writeWhole } from '#adapters/files/writeWhole.ts';
import type { CopyFolder, CopyMemory } from '#app/archives.ts';
import { Fault } from '#core/errors.ts';
import { claim, copyName, newWorkspaceName, refuseForeign } from './copyFolderOwner.ts';

const memorySchema = z.object({
  /** Tells this workspace from others that may have chosen the same folder. */
  workspace: z.string().exactOptional(),
  /** Where one was chosen. */
  folder: z.string().exactOptional(),
  earlierFolders: z.array(z.string()).exactOptional(),
  lastState: z.string().exactOptional(),
  lastAt: z.string().exactOptional(),
  lastFault: z.object({ at: z.string(), title: z.string(), message: z.string(), nextStep: z.string() }).exactOptional(),
});

const draftName = /^\.platewright-copy-unfinished-(\d+)\.zip$/;

/** The folder of daily copies: `copies` below the data folder, until another one is chosen. */
export function copyFolder(dataFolder: string): CopyFolder {
  const memoryFile = join(dataFolder, 'copies.json');
  const ownFolder = join(dataFolder, 'copies');
  const { workspace = newWorkspaceName(), ...read } = readMemory(memoryFile);
  let memory: CopyMemory = { folder: ownFolder, ...read };
  // Its own folder goes along with a data folder that is copied or moved; the place of a chosen one stays.
  const keep = async ({ folder, ...rest }: CopyMemory): Promise<void> =>
    writeWhole(memoryFile, JSON.stringify({ workspace, ...rest, ...(folder === ownFolder ? {} : { folder }) }));
  return {
    list: async () => {
      if (memory.folder !== ownFolder) refuseForeign(memory.folder, workspace);
      const names = await readdir(memory.folder).catch(error => {
        if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
        throw notUsable(memory.folder);
      });
      const copies = names.flatMap(name => {
        const [, day, unlocked] = copyName.exec(name) ?? [];
        return day !== undefined && isDay(day) ? [{ day, holdsKey: unlocked !== undefined, path: join(memory.folder, name) }] : [];
      });
      // What has such a name and is none (a link that leads nowhere, a folder) is nobody's copy.
      const found = await Promise.all(copies.map(async copy => ({ ...copy, about: await stat(copy.path).catch(() => undefined) })));
      return found.flatMap(({ about, ...copy }) => (about?.isFile() ? [{ ...copy, bytes: about.size }] : []));
    },
    draftPath: async () => {
      // A folder of choice may lie on a disk that is not there now: in its place no other is made.
      usable(memory.folder, memory.folder === ownFolder);
      if (memory.folder !== ownFolder) {
        await keep(memory);
        claim(memory.folder, workspace, true);
      }
      for (const name of await readdir(memory.folder)) {
        const [, program] = draftName.exec(name) ?? [];
        if (program !== undefined && (Number(program) === process.pid || !isAlive(Number(program))))
          await rm(join(memory.folder, name), { force: true });
      }
      return join(memory.folder, `.platewright-copy-unfinished-${process.pid}.zip`);
    },
    finish: async (draft, { day, holdsKey }) => {
      const path = join(memory.folder, `platewright-copy-${day}${holdsKey ? '-unlocked' : ''}.zip`);
      await rename(draft, path);
      return path;
    },
    remove: ({ path }) => rm(path, { force: true }),
    memory: () => memory,
    remember: async next => {
      if (next.folder !== memory.folder) {
        usable(next.folder, true);
        if (next.folder !== ownFolder) {
          // Whose the mark is must be known before it stands.
          await keep(memory);
          claim(next.folder, workspace, memory.earlierFolders?.includes(next.folder) ?? false);
        }
      }
      // Also where the disk is full: what went wrong is told at least until the program ends.
      memory = next;
      await keep(next);
    },
  };
}

function isDay(stamp: string): boolean {
  const day = stamp.slice(0, 10);
  const at = new Date(`${day}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(day);
}

function isAlive(program: number): boolean {
  try {
    process.kill(program, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Makes the folder in one that is there. @throws Fault copies-folder-not-usable */
function usable(folder: string, mayMake: boolean): void {
  try {
    if (!isAbsolute(folder)) throw notUsable(folder);
    // One step only: with all steps at once, a system's own folder (/proc) keeps the program for good.
    if (mayMake && !existsSync(folder)) mkdirSync(folder, { mode: 0o700 });
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
function readMemory(path: string): z.infer<typeof memorySchema> {
  try {
    return memorySchema.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    return {};
  }
}
