import { chmod, lstat, mkdir, mkdtemp, readdir, readFile, realpath, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { SiteFiles } from '#app/ports.ts';
import { Fault } from '#core/errors.ts';
import { beginUnfinished, endUnfinished, sweepUnfinished, unfinishedName } from './unfinished.ts';

/** Lists the files of the last build, so that the next one knows what is its own. */
const listName = '.platewright-site.json';

/**
 * Puts a site in the place of the last build. Everything is written to a folder beside it first and swapped in by renaming, so that
 * whatever goes wrong the last good build stays and nothing outside is touched: no file is ever written through a path that was there before.
 *
 * @throws Fault folder-not-owned for a folder that is a link, a file, or holds anything that the last build did not write;
 *   output-not-written when the system refuses.
 */
export async function writeSite(folder: string, files: SiteFiles): Promise<void> {
  const target = resolve(folder);
  for (const path of files.keys()) refusePath(path);
  await inWords(target, async () => {
    // The parent may itself be reached through a link: that is the person's own arrangement. The target may not be one.
    await mkdir(dirname(target), { recursive: true });
    const parent = await realpath(dirname(target));
    const place = join(parent, basename(target));
    const previous = join(parent, `.${basename(target)}.previous`);
    await mendBrokenSwap(place, previous);
    await refuseForeign(place);
    const building = `.${basename(target)}.building-`;
    await sweepUnfinished(parent, building);
    const fresh = await mkdtemp(join(parent, unfinishedName(building)));
    beginUnfinished(fresh);
    try {
      await writeAll(fresh, files);
      await swap(fresh, place, previous);
    } catch (error) {
      await rm(fresh, { recursive: true, force: true });
      throw error;
    } finally {
      endUnfinished(fresh);
    }
  });
}

function refusePath(path: string): void {
  const parts = path.split('/');
  const isPlain = parts.every(part => /^[a-z0-9][a-z0-9.-]*$/.test(part) && !part.includes('..'));
  if (!isPlain) throw new RangeError(`not a path of a site: ${path}`);
}

async function writeAll(fresh: string, files: SiteFiles): Promise<void> {
  for (const [path, content] of files) {
    const file = join(fresh, path);
    await mkdir(dirname(file), { recursive: true, mode: 0o755 });
    await writeFile(file, content, { flag: 'wx', mode: 0o644 });
  }
  const list = { platewrightSite: 1, files: [...files.keys()].sort() };
  await writeFile(join(fresh, listName), `${JSON.stringify(list, null, 2)}\n`, { flag: 'wx', mode: 0o644 });
  // What makes temporary folders makes them the user's alone; a host has to read this one.
  await chmod(fresh, 0o755);
}

async function swap(fresh: string, place: string, previous: string): Promise<void> {
  const hadOne = (await kindOf(place)) !== 'nothing';
  if (hadOne) await rename(place, previous);
  try {
    await rename(fresh, place);
  } catch (error) {
    if (hadOne) await rename(previous, place);
    throw error;
  }
  // Links are removed, never followed.
  if (hadOne) await rm(previous, { recursive: true, force: true });
}

/** A build that was stopped between the two renames left the last good build under its other name. */
async function mendBrokenSwap(place: string, previous: string): Promise<void> {
  if ((await kindOf(previous)) !== 'folder' || (await ownFiles(previous)) === undefined) return;
  if ((await kindOf(place)) === 'nothing') await rename(previous, place);
  else await rm(previous, { recursive: true, force: true });
}

async function refuseForeign(place: string): Promise<void> {
  const kind = await kindOf(place);
  if (kind === 'nothing') return;
  if (kind !== 'folder')
    throw new Fault('folder-not-owned', `"${place}" is ${kind === 'link' ? 'a link' : 'a file'}, not a folder of its own.`);
  const own = await ownFiles(place);
  for (const path of await pathsIn(place)) {
    if (path === listName || own?.has(path)) continue;
    throw new Fault('folder-not-owned', `"${place}" holds "${path}", which no build of a site wrote.`);
  }
}

/** What the list of the last build names; undefined without a list that can be read. */
async function ownFiles(place: string): Promise<ReadonlySet<string> | undefined> {
  try {
    if ((await kindOf(join(place, listName))) !== 'file') return undefined;
    const list: unknown = JSON.parse(await readFile(join(place, listName), 'utf8'));
    if (typeof list !== 'object' || list === null || !('files' in list) || !Array.isArray(list.files)) return undefined;
    return new Set(list.files.filter(path => typeof path === 'string'));
  } catch {
    return undefined;
  }
}

/** Every file below a folder, and every folder that has none; a link goes by its name with "@" behind it, so that no list names it. */
async function pathsIn(place: string, below = ''): Promise<readonly string[]> {
  const entries = await readdir(join(place, below), { withFileTypes: true });
  if (entries.length === 0) return below === '' ? [] : [`${below}/`];
  const found: string[] = [];
  for (const entry of entries) {
    const path = below === '' ? entry.name : `${below}/${entry.name}`;
    if (entry.isDirectory()) found.push(...(await pathsIn(place, path)));
    else found.push(entry.isFile() ? path : `${path}@`);
  }
  return found;
}

async function kindOf(path: string): Promise<'nothing' | 'folder' | 'file' | 'link'> {
  try {
    const stats = await lstat(path);
    return stats.isSymbolicLink() ? 'link' : stats.isDirectory() ? 'folder' : 'file';
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return 'nothing';
    throw error;
  }
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'you may not write there',
  EPERM: 'you may not write there',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full',
  ENOTDIR: 'a part of the path is a file',
  EEXIST: 'a part of the path is a file',
  EBUSY: 'another program uses it',
  ENAMETOOLONG: 'its name is too long',
};

async function inWords(target: string, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    throw new Fault('output-not-written', `"${target}" cannot be written: ${reasons[code] ?? code}. The last build is as it was.`);
  }
}

function codeOf(error: unknown): string | undefined {
  return error instanceof Error && !(error instanceof Fault) && 'code' in error && typeof error.code === 'string' ? error.code : undefined;
}
