import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';

/** A word in the writings in which it could lie on a disk. */
function writings(word: string): readonly Buffer[] {
  const utf8 = Buffer.from(word);
  const utf16le = Buffer.from(word, 'utf16le');
  const hex = utf8.toString('hex');
  const inBase64 = [0, 1, 2].map(before => {
    const text = Buffer.concat([Buffer.alloc(before), utf8])
      .toString('base64')
      .replace(/=+$/, '');
    // The first and the last signs hang on what stands beside the word.
    const from = Math.ceil((before * 8) / 6);
    const to = Math.floor(((before + utf8.length) * 8) / 6);
    return Buffer.from(text.slice(from, to));
  });
  return [utf8, utf16le, Buffer.from(utf16le).swap16(), Buffer.from(hex), Buffer.from(hex.toUpperCase()), ...inBase64];
}

/** Every file below the folders, also what is packed in ZIP files, with the words that lie in it readable in one of the writings. */
export function inClear(
  folders: readonly string[],
  words: readonly string[],
): { readonly files: number; readonly hits: readonly string[] } {
  const sought = words.flatMap(word => writings(word).map(bytes => ({ word, bytes })));
  const hits: string[] = [];
  let files = 0;
  const look = (path: string, content: Buffer): void => {
    files += 1;
    for (const { word, bytes } of sought) if (content.includes(bytes)) hits.push(`"${word}" in ${path}`);
  };
  for (const path of folders.flatMap(filesBelow)) {
    const content = contentOf(path);
    if (content === undefined) continue;
    look(path, content);
    if (content.subarray(0, 2).toString('latin1') === 'PK')
      for (const [name, bytes] of Object.entries(unpacked(content))) look(`${path}: ${name}`, Buffer.from(bytes));
    for (const { word, bytes } of sought) if (Buffer.from(path).includes(bytes)) hits.push(`"${word}" in the name ${path}`);
  }
  return { files, hits: [...new Set(hits)] };
}

function filesBelow(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => join(entry.parentPath, entry.name));
}

/** A running program may take a file away meanwhile. */
function contentOf(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

/** A half written one does not unpack, and was looked at as it is. */
function unpacked(content: Buffer): Record<string, Uint8Array> {
  try {
    return unzipSync(content);
  } catch {
    return {};
  }
}
