import { accessSync, constants, existsSync, mkdirSync, readFileSync, statSync } from 'node:fs';
import { readdir, rename, rm, stat } from 'node:fs/promises';
import { isAbsolute, join, resolve } from 'node:path';
import { z } from 'zod';
import { writeWhole } from '#adapters/files/writeWhole.ts';
import type { CopyFolder, CopyMemory, KeptCopy } from '#app/archives.ts';
import { Fault } from '#core/errors.ts';
import { claim, copyName, isOf, refuseForeign, workspaceName } from './copyFolderOwner.ts';

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
  const sweptFolder = join(dataFolder, 'waiting');
  const { workspace = workspaceName(ownFolder), ...read } = readMemory(memoryFile);
  let memory: CopyMemory = { folder: ownFolder, ...read };
  // Its own folder goes along with a data folder that is copied or moved; the place of a chosen one stays.
  const keep = async ({ folder, ...rest }: CopyMemory): Promise<void> =>
    writeWhole(memoryFile, JSON.stringify({ workspace, ...rest, ...(folder === ownFolder ? {} : { folder }) }));
  return {
    list: async () => {
      if (memory.folder === ownFolder) return existsSync(ownFolder) ? copiesIn(ownFolder) : [];
      refuseForeign(memory.folder, workspace);
      return copiesIn(memory.folder);
    },
    earlier: async () => {
      const folders = (memory.earlierFolders ?? []).filter(one => one === ownFolder || isOf(one, workspace));
      return (await Promise.all(folders.map(one => copiesIn(one).catch(() => [])))).flat();
    },
    draftPath: async () => {
      // A folder of choice may lie on a disk that is not there now: in its place no other is made.
      usable(memory.folder, memory.folder === ownFolder);
      await keep(memory);
      claim(memory.folder, workspace, true);
      for (const name of await readdir(memory.folder)) {
        const [, program] = draftName.exec(name) ?? [];
        if (program !== undefined && (Number(program) === process.pid || !isAlive(Number(program))))
          await rm(join(memory.folder, name), { force: true });
      }
      return join(memory.folder, `.platewright-copy-unfinished-${process.pid}.zip`);
    },
    finish: async (draft, { day, holdsKey }) => {
      const path = join(memory.folder, `platewright-copy-${day}${holdsKey ? '-unlocked' : ''}.zip`);
      await rename(draft, path).catch(error => {
        throw new Fault('archive-not-made', `The copy cannot be put in its place, "${path}" (${error.code ?? 'unknown reason'}).`);
      });
      return path;
    },
    remove: ({ path }) => rm(path, { force: true }),
    memory: () => memory,
    remember: async next => {
      // One folder has many spellings.
      const folder = isAbsolute(next.folder) ? resolve(next.folder) : next.folder;
      if (folder !== memory.folder) {
        if (folder === sweptFolder) throw notUsable(folder, 'is swept at each start');
        usable(folder, true);
        // Whose the mark is must be known before it stands, also when the memory of it is lost: so it stands in its own folder as well.
        await keep(memory);
        usable(ownFolder, true);
        claim(ownFolder, workspace, true);
        claim(folder, workspace, folder === ownFolder || (memory.earlierFolders?.includes(folder) ?? false));
      }
      // Also where the disk is full: what went wrong is told at least until the program ends.
      memory = { ...next, folder, ...(next.earlierFolders && { earlierFolders: next.earlierFolders.filter(one => one !== folder) }) };
      await keep(memory);
    },
  };
}

/** @throws Fault copies-folder-not-usable */
async function copiesIn(folder: string): Promise<readonly KeptCopy[]> {
  // One that is not there is on a disk that is away: "no copies" would be another thing.
  const names = await readdir(folder).catch(() => {
    throw notUsable(folder);
  });
  const copies = names.flatMap(name => {
    const [, day, unlocked] = copyName.exec(name) ?? [];
    return day !== undefined && isDay(day) ? [{ day, holdsKey: unlocked !== undefined, path: join(folder, name) }] : [];
  });
  // What has such a name and is none (a link that leads nowhere, a folder) is nobody's copy.
  const found = await Promise.all(copies.map(async copy => ({ ...copy, about: await stat(copy.path).catch(() => undefined) })));
  return found.flatMap(({ about, ...copy }) =>
    about?.isFile() ? [{ ...copy, bytes: about.size, madeAt: about.mtime.toISOString() }] : [],
  );
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
  if (!isAbsolute(folder)) throw notUsable(folder, 'is not a whole path: it begins with the root or a drive');
  try {
    // One step only: with all steps at once, a system's own folder (/proc) keeps the program for good.
    if (mayMake && !existsSync(folder)) mkdirSync(folder, { mode: 0o700 });
    if (!statSync(folder).isDirectory()) throw notUsable(folder, 'is a file');
    accessSync(folder, constants.W_OK | constants.X_OK);
  } catch (error) {
    if (error instanceof Fault) throw error;
    const isMissing = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    throw notUsable(folder, isMissing ? `is not there${mayMake ? ', nor the folder that it would lie in' : ''}` : 'may not be written');
  }
}

function notUsable(folder: string, why = 'cannot be read'): Fault {
  return new Fault('copies-folder-not-usable', `"${folder}" ${why}.`);
}

/** A damaged memory is as good as none: it holds where copies lie, and the folder of choice is chosen again. */
function readMemory(path: string): z.infer<typeof memorySchema> {
  try {
    return memorySchema.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    return {};
  }
}
