import { readFile, stat } from 'node:fs/promises';
import { Fault } from '#core/errors.ts';

/** A category of a supermarket is a few megabytes; 200 MB still fits into one string. */
const largestFileBytes = 200 * 1024 * 1024;

/**
 * A whole file.
 *
 * @throws Fault file-not-found, file-not-readable (a folder, no permission), file-too-large (over 200 MB).
 */
export async function readBytes(path: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(path);
    if (size > largestFileBytes) {
      throw new Fault(
        'file-too-large',
        `"${path}" has ${Math.ceil(size / 1024 / 1024)} MB; ${largestFileBytes / 1024 / 1024} MB is the most.`,
      );
    }
    return await readFile(path);
  } catch (error) {
    if (error instanceof Fault) throw error;
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'ENOENT' || code === 'ENOTDIR') throw new Fault('file-not-found', `There is no file "${path}".`);
    if (code === 'EISDIR') throw new Fault('file-not-readable', `"${path}" is a folder, not a file.`);
    throw new Fault('file-not-readable', `"${path}" cannot be opened (${code ?? 'unknown reason'}).`);
  }
}
