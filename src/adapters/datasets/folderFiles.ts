import { createReadStream } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { DatasetFile } from '#app/ports.ts';
import { Fault } from '#core/errors.ts';

/**
 * The files of a folder, or the one file; where a folder holds nothing but one folder, as archives unpack, the files of that.
 *
 * @throws Fault file-not-found, file-not-readable.
 */
export async function folderFiles(path: string): Promise<readonly DatasetFile[]> {
  try {
    const { size, isDirectory } = await about(path);
    if (!isDirectory) return [fileAt(path, size)];
    const entries = (await readdir(path, { withFileTypes: true })).filter(({ name }) => !name.startsWith('.'));
    const [only] = entries;
    if (entries.length === 1 && only?.isDirectory()) return await folderFiles(join(path, only.name));
    const names = entries.filter(entry => entry.isFile()).map(({ name }) => name);
    return await Promise.all(names.sort().map(async name => fileAt(join(path, name), (await about(join(path, name))).size)));
  } catch (error) {
    if (error instanceof Fault) throw error;
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'ENOENT' || code === 'ENOTDIR') throw new Fault('file-not-found', `There is no file or folder "${path}".`);
    throw new Fault('file-not-readable', `"${path}" cannot be opened (${code ?? 'unknown reason'}).`);
  }
}

async function about(path: string): Promise<{ readonly size: number; readonly isDirectory: boolean }> {
  const stats = await stat(path);
  return { size: stats.size, isDirectory: stats.isDirectory() };
}

function fileAt(path: string, bytes: number): DatasetFile {
  return { name: basename(path), bytes, open: () => createReadStream(path, { highWaterMark: 256 * 1024 }) };
}
