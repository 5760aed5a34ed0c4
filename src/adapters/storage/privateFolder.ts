import { chmodSync, existsSync, lstatSync, mkdirSync, readdirSync, rmdirSync, type Stats, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { Fault } from '#core/errors.ts';
import { storageFault } from './faults.ts';

export interface PrivateFolder {
  /** Absolute. */
  readonly path: string;
  /** Takes back the folder that was made, when the start failed before anything was put into it. */
  readonly undo: () => void;
}

/**
 * The data folder, made when it is missing: it and the databases in it are the user's alone (700, 600), whatever made them and however
 * they were copied here. What belongs to another user is left as it is and told.
 *
 * @throws Fault data-folder-not-usable, database-read-only, database-full
 */
export function privateFolder(given: string, say: (text: string) => void): PrivateFolder {
  const path = resolve(given);
  try {
    const made = makeFolders(path);
    makePrivate(path, statSync(path), 0o700, say);
    for (const name of readdirSync(path).filter(one => /^(?:platewright|clients)\.sqlite/.test(one))) {
      const stats = lstatSync(join(path, name));
      if (stats.isFile()) makePrivate(join(path, name), stats, 0o600, say);
    }
    return { path, undo: () => made !== undefined && removeEmpty(path, made) };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    const reason = reasons[code];
    if (reason !== undefined) throw new Fault('data-folder-not-usable', `"${path}" cannot be the data folder: ${reason}.`);
    throw storageFault(error);
  }
}

/** Step by step: all steps at once never end in a system's own folder (/proc). Gives the first that was made. */
function makeFolders(path: string): string | undefined {
  if (existsSync(path)) {
    if (!statSync(path).isDirectory()) throw Object.assign(new Error('not a folder'), { code: 'EEXIST' });
    return undefined;
  }
  const above = dirname(path) === path ? undefined : makeFolders(dirname(path));
  mkdirSync(path, { mode: 0o700 });
  return above ?? path;
}

const reasons: Readonly<Record<string, string>> = {
  EEXIST: 'it is a file, or a link that leads nowhere',
  ENOENT: 'a part of the path leads nowhere',
  ENOTDIR: 'a part of the path is a file',
  ELOOP: 'its links lead in a circle',
  ENAMETOOLONG: 'its name is too long',
};

/** Refuses a folder of clients whose shelf is gone: a new shelf in its place would hide the loss. @throws Fault database-missing */
export function refuseMissingShelf(folder: string): void {
  if (sizeOf(join(folder, 'clients.sqlite')) === 0 || sizeOf(join(folder, 'platewright.sqlite')) > 0) return;
  throw new Fault('database-missing', `"${folder}" holds clients, but its platewright.sqlite is missing or empty.`);
}

function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0;
}

function makePrivate(path: string, stats: Stats, mode: number, say: (text: string) => void): void {
  // Windows keeps the folders of a user for that user by itself.
  if (process.getuid === undefined || (stats.mode & 0o077) === 0) return;
  const isShared = (stats.mode & 0o1000) !== 0;
  if (stats.uid !== process.getuid() || isShared)
    say(`Note: "${path}" ${isShared ? 'is shared by all users' : 'belongs to another user'} of this computer; others may read it.\n`);
  else chmodSync(path, mode);
}

/** Upwards from the folder to the first one that was made, as far as they are empty. */
function removeEmpty(path: string, made: string): void {
  try {
    for (let folder = path; folder.length >= made.length; folder = dirname(folder)) rmdirSync(folder);
  } catch {
    // Something is in it: it stays.
  }
}
