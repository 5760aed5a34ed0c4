import { createHash } from 'node:crypto';
import { open, stat } from 'node:fs/promises';
import { type Entry, openPromise, type ZipFile } from 'yauzl';
import { Fault } from '#core/errors.ts';
import { type Manifest, manifestName, readManifest } from './manifest.ts';

/** More files than pictures of a lifetime's labels; the list of so many takes 200 MB. */
const mostFiles = 200_000;
/** A line holds a row: the longest are the bodies of composition tables. A picture comes in one piece as well. */
const longestPieceBytes = 96 * 2 ** 20;
/** For each of the most files a name, a size and a digest. */
const longestManifestBytes = 32 * 2 ** 20;
/** Text of rows with names and numbers shrinks to a thirtieth at best; what shrinks further was made to burst. */
const mostShrunk = 300;
const neverCheckedBytes = 16 * 2 ** 20;
/** Pictures are packed already: ours lie as they are, and another program that packs them again gains next to nothing. */
const mostShrunkPicture = 20;
const neverCheckedPictureBytes = 2 ** 20;

/** An archive that is open for reading: every file that its manifest names, each only as the manifest describes it. */
export class OpenArchive {
  readonly manifest: Manifest;
  private readonly zip: ZipFile;
  private readonly entries: ReadonlyMap<string, Entry>;
  private readonly digests: ReadonlyMap<string, string>;

  private constructor(zip: ZipFile, entries: ReadonlyMap<string, Entry>, manifest: Manifest) {
    this.zip = zip;
    this.entries = entries;
    this.manifest = manifest;
    this.digests = new Map(manifest.files.map(({ name, sha256 }) => [name, sha256]));
  }

  /** @throws Fault archive-not-valid, archive-newer */
  static async open(path: string): Promise<OpenArchive> {
    const zip = await readable(openPromise(path, { autoClose: false, strictFileNames: true }));
    try {
      const entries = await entriesOf(zip);
      const manifestEntry = entries.get(manifestName);
      if (manifestEntry === undefined) throw notValid('It has no list of contents: it is another kind of ZIP file, or was cut off.');
      const text = (await joined(chunksOf(zip, manifestEntry), longestManifestBytes)).toString();
      const manifest = readManifest(text);
      refuseOtherFiles(entries, manifest);
      return new OpenArchive(zip, entries, manifest);
    } catch (error) {
      zip.close();
      throw error;
    }
  }

  /** Whether the archive has a file of that name. */
  has(name: string): boolean {
    return name !== manifestName && this.entries.has(name);
  }

  /** The content of a file, in pieces; after the last one its size and digest were compared. @throws Fault archive-not-valid */
  async *chunks(name: string): AsyncGenerator<Buffer> {
    const entry = this.entries.get(name);
    const said = this.digests.get(name);
    if (entry === undefined || said === undefined) throw notValid(`"${name}" is missing in it.`);
    const digest = createHash('sha256');
    for await (const chunk of chunksOf(this.zip, entry)) {
      digest.update(chunk);
      yield chunk;
    }
    if (digest.digest('hex') !== said) throw notValid(`"${name}" in it was changed or damaged.`);
  }

  /** A file as a whole. @throws Fault archive-not-valid */
  async whole(name: string): Promise<Buffer> {
    return joined(this.chunks(name));
  }

  /** The lines of a file. @throws Fault archive-not-valid */
  async *lines(name: string): AsyncGenerator<string> {
    let begun: Buffer[] = [];
    let length = 0;
    for await (const chunk of this.chunks(name)) {
      let start = 0;
      for (let end = chunk.indexOf(10); end >= 0; end = chunk.indexOf(10, start)) {
        begun.push(chunk.subarray(start, end));
        yield Buffer.concat(begun).toString();
        begun = [];
        length = 0;
        start = end + 1;
      }
      const rest = chunk.subarray(start);
      length += rest.length;
      if (length > longestPieceBytes) throw notValid(`A line of "${name}" in it is too long.`);
      if (rest.length > 0) begun.push(rest);
    }
    if (begun.length > 0) yield Buffer.concat(begun).toString();
  }

  close(): void {
    this.zip.close();
  }
}

/** Whether a file begins as ZIP files do, and how long it is. @throws Fault file-not-found, file-not-readable */
export async function beginsAsZip(path: string): Promise<{ readonly isZip: boolean; readonly bytes: number }> {
  try {
    const about = await stat(path);
    if (!about.isFile()) throw new Fault('file-not-readable', `"${path}" is not a file.`);
    const file = await open(path);
    try {
      const { buffer } = await file.read(Buffer.alloc(4), 0, 4, 0);
      return { isZip: buffer.toString('latin1') === 'PK\u0003\u0004', bytes: about.size };
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof Fault) throw error;
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    throw new Fault(code === 'ENOENT' ? 'file-not-found' : 'file-not-readable', `"${path}" cannot be read (${code ?? 'unknown reason'}).`);
  }
}

async function entriesOf(zip: ZipFile): Promise<ReadonlyMap<string, Entry>> {
  if (zip.entryCount > mostFiles) throw notValid('It lists more files than any archive of ours.');
  // ZIP64 can name places beyond numbers, which the reader of ZIP files asks the disk for.
  if (Number(zip.readEntryCursor) > zip.fileSize) throw notValid('Its directory lies beyond its end.');
  const entries = new Map<string, Entry>();
  let packedBytes = 0;
  const all = zip.eachEntry();
  for (;;) {
    const { value: entry, done } = await readable(all.next());
    if (done || entry === undefined) return entries;
    if (entry.relativeOffsetOfLocalHeader > zip.fileSize) throw notValid('A file in it lies beyond its end.');
    packedBytes += entry.compressedSize;
    if (packedBytes > zip.fileSize) throw notValid('Files in it lie over each other.');
    if (entries.has(entry.fileName)) throw notValid('Two files in it have one name.');
    if (entry.isEncrypted() || !entry.canDecodeFileData()) throw notValid('It is packed in a way that no archive of ours is.');
    if (entry.uncompressedSize > neverCheckedBytes && entry.uncompressedSize > mostShrunk * entry.compressedSize)
      throw notValid('It would unpack to far more than it can hold.');
    if (isBurst(entry)) throw notValid('A picture in it would unpack to far more than it can hold.');
    entries.set(entry.fileName, entry);
  }
}

function isBurst({ fileName, compressedSize, uncompressedSize }: Entry): boolean {
  if (!fileName.startsWith('photos/') || uncompressedSize <= neverCheckedPictureBytes) return false;
  return uncompressedSize > mostShrunkPicture * compressedSize;
}

/** What is not in the list of contents is none of ours, and what it lists must be there. */
function refuseOtherFiles(entries: ReadonlyMap<string, Entry>, { files }: Manifest): void {
  for (const { name, bytes } of files) {
    if (name === manifestName || entries.get(name)?.uncompressedSize !== bytes)
      throw notValid(`"${name}" is missing in it, or has another size.`);
  }
  if (entries.size !== new Set(files.map(({ name }) => name)).size + 1)
    throw notValid('It holds files that its list of contents does not name.');
}

/** @throws Fault archive-not-valid when it is longer than any piece of ours */
async function joined(chunks: AsyncIterable<Buffer>, longestBytes = longestPieceBytes): Promise<Buffer> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const chunk of chunks) {
    length += chunk.length;
    if (length > longestBytes) throw notValid('A piece of it is too large.');
    parts.push(chunk);
  }
  return Buffer.concat(parts, length);
}

async function* chunksOf(zip: ZipFile, entry: Entry): AsyncGenerator<Buffer> {
  const stream = await readable(zip.openReadStreamPromise(entry));
  const parts = stream[Symbol.asyncIterator]();
  try {
    for (;;) {
      const { value, done } = await readable(parts.next());
      if (done) return;
      yield value;
    }
  } finally {
    stream.destroy();
  }
}

/** What the reader of ZIP files says of a file is not for a person. @throws Fault archive-not-valid */
async function readable<Result>(work: Promise<Result>): Promise<Result> {
  try {
    return await work;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (code === 'ENOENT') throw new Fault('file-not-found', 'The archive is not there any more.');
    if (/^E(ACCES|PERM|IO)$/.test(code)) throw new Fault('file-not-readable', `The archive cannot be read (${code}).`);
    throw notValid('It is no ZIP file, was cut off, or is damaged.');
  }
}

function notValid(message: string): Fault {
  return new Fault('archive-not-valid', message);
}
