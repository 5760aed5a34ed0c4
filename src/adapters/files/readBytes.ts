import { constants } from 'node:fs';
import { type FileHandle, open, stat } from 'node:fs/promises';
import { setTimeout } from 'node:timers/promises';
import { Fault } from '#core/errors.ts';

/** A category of a supermarket is a few megabytes; what is held at once may have 200. */
const largestFileBytes = 200 * 1024 * 1024;
const pieceBytes = 256 * 1024;

/** A pipe into which nobody writes is given up after a while. */
const silenceMs = 10_000;
const pauseMs = 20;

/**
 * A whole file; a pipe is read to its end.
 *
 * @throws Fault file-not-found, file-not-readable (a folder, a device, a socket, no permission), file-too-large (over 200 MB), file-took-too-long
 *   for a pipe into which nobody writes.
 */
export async function readBytes(path: string): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  let bytes = 0;
  for await (const piece of filePieces(path)) {
    bytes += piece.length;
    if (bytes > largestFileBytes) throw tooLarge(path, 'more than 200 MB');
    pieces.push(piece);
  }
  return Buffer.concat(pieces);
}

/** Whether a file may be read again from its start, as a pipe may not. @throws Fault file-not-found, file-not-readable */
export async function isPlainFile(path: string): Promise<boolean> {
  const stats = await inWords(path, () => stat(path));
  if (stats.isDirectory()) throw new Fault('file-not-readable', `"${path}" is a folder, not a file.`);
  // A device may go on for ever.
  if (stats.isCharacterDevice() || stats.isBlockDevice()) throw new Fault('file-not-readable', `"${path}" is a device, not a file.`);
  if (stats.isSocket()) throw new Fault('file-not-readable', `"${path}" is a socket, not a file.`);
  return stats.isFile();
}

/** What a file holds, piece by piece. Opened so that neither opening nor reading can wait for ever. @throws as `readBytes` */
export async function* filePieces(path: string): AsyncGenerator<Uint8Array> {
  const isFile = await isPlainFile(path);
  const file = await inWords(path, () => open(path, constants.O_RDONLY | (isFile ? 0 : constants.O_NONBLOCK)));
  try {
    let hasBegun = isFile;
    for (;;) {
      const piece = Buffer.allocUnsafe(pieceBytes);
      const read = await readSome(path, file, piece, hasBegun);
      if (read === 0) return;
      hasBegun = true;
      yield piece.subarray(0, read);
    }
  } finally {
    await file.close();
  }
}

/** Bytes read, 0 at the end. A pipe may have nothing yet: then it is asked again until it was silent for too long. */
async function readSome(path: string, file: FileHandle, into: Buffer, hasBegun: boolean): Promise<number> {
  for (let silence = 0; silence < silenceMs; silence += pauseMs) {
    const read = await inWords(path, () => file.read(into).catch(notYet));
    if (typeof read === 'object' && (read.bytesRead > 0 || hasBegun)) return read.bytesRead;
    await setTimeout(pauseMs);
  }
  throw new Fault('file-took-too-long', `"${path}" is a pipe, and nothing came out of it for ${silenceMs / 1000} seconds.`);
}

function notYet(error: NodeJS.ErrnoException): 'nothing yet' {
  if (error.code === 'EAGAIN') return 'nothing yet';
  throw error;
}

function tooLarge(path: string, size: string): Fault {
  return new Fault('file-too-large', `"${path}" has ${size}; ${largestFileBytes / 1024 / 1024} MB is the most.`);
}

async function inWords<Result>(path: string, work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'ENOENT' || code === 'ENOTDIR') throw new Fault('file-not-found', `There is no file "${path}".`);
    if (code === 'EISDIR') throw new Fault('file-not-readable', `"${path}" is a folder, not a file.`);
    throw new Fault('file-not-readable', `"${path}" cannot be opened (${code ?? 'unknown reason'}).`);
  }
}
