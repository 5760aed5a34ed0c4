import { crc32 } from 'node:zlib';
import { Inflate } from 'fflate';
import { Fault } from '#core/errors.ts';

/** What all parts of an honest workbook unpack to is far below (own decision: 5 million cells of 60 bytes XML). */
const mostUnpackedBytes = 512 * 2 ** 20;
const mostParts = 10_000;

/** Compressed bytes at once: whatever they unpack to is at most a thousandfold (RFC 1951). */
const sliceBytes = 4096;

interface Part {
  readonly packed: Uint8Array;
  readonly isDeflated: boolean;
  readonly bytes: number;
  readonly crc: number;
}

/**
 * The parts of a ZIP file by name, as its central directory has them (APPNOTE.TXT 6.3.10, sections 4.3 and 4.5): nothing is written
 * anywhere, so names can do no harm. A part is unpacked piece by piece and never further than it says it goes.
 */
export class ZipParts {
  private readonly parts = new Map<string, Part>();

  /** @throws Fault workbook-not-readable, workbook-encrypted, table-too-large */
  constructor(file: Uint8Array) {
    try {
      this.readDirectory(file);
    } catch (error) {
      if (error instanceof RangeError) throw broken('the list of its parts leads out of the file');
      throw error;
    }
  }

  has(name: string): boolean {
    return this.parts.has(name);
  }

  names(): readonly string[] {
    return [...this.parts.keys()];
  }

  /** How much of the file a part takes. */
  packedBytes(name: string): number {
    return this.parts.get(name)?.packed.length ?? 0;
  }

  /**
   * Hands the bytes of a part on, with how much of it is read, until `take` says that it has enough.
   *
   * @throws Fault workbook-not-readable when the part is missing, cut off, longer than it says, or damaged.
   */
  read(name: string, take: (bytes: Uint8Array, packedBytes: number) => boolean): void {
    const part = this.parts.get(name);
    if (part === undefined) throw broken(`"${name.slice(0, 60)}" is missing`);
    let bytes = 0;
    let crc = 0;
    let at = 0;
    let goesOn = true;
    const pass = (piece: Uint8Array): void => {
      if (!goesOn) return;
      bytes += piece.length;
      if (bytes > part.bytes) throw broken('a part of it is longer than it says');
      crc = crc32(piece, crc);
      goesOn = take(piece, at);
    };
    const inflate = new Inflate(pass);
    while (goesOn && at < part.packed.length) {
      const slice = part.packed.subarray(at, at + sliceBytes);
      at += slice.length;
      if (part.isDeflated) inflated(() => inflate.push(slice, at >= part.packed.length));
      else pass(slice);
    }
    if (goesOn && (bytes !== part.bytes || crc !== part.crc)) throw broken('a part of it is damaged or cut off');
  }

  private readDirectory(file: Uint8Array): void {
    const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
    const { count, start } = directory(view);
    if (count > mostParts) throw broken(`it has ${count.toLocaleString('en-US')} parts`);
    let at = start;
    let unpacked = 0;
    for (let part = 0; part < count; part += 1) {
      if (view.getUint32(at, true) !== 0x02014b50) throw broken('the list of its parts is damaged');
      const [nameLength, extraLength, commentLength] = [28, 30, 32].map(from => view.getUint16(at + from, true)) as [
        number,
        number,
        number,
      ];
      const name = new TextDecoder().decode(file.subarray(at + 46, at + 46 + nameLength));
      if ((view.getUint16(at + 8, true) & 1) === 1) throw new Fault('workbook-encrypted', 'The parts of the file are encrypted.');
      if (this.parts.has(name)) throw broken(`it has two parts "${name.slice(0, 60)}"`);
      const read = partAt(view, at);
      unpacked += read.bytes;
      this.parts.set(name, read);
      at += 46 + nameLength + extraLength + commentLength;
    }
    if (unpacked > mostUnpackedBytes) {
      const megabytes = Math.round(unpacked / 2 ** 20).toLocaleString('en-US');
      throw new Fault('table-too-large', `The workbook unpacks to ${megabytes} MB; ${mostUnpackedBytes / 2 ** 20} MB is the most.`);
    }
  }
}

/** Where the central directory is: named by the record at the end of the file, behind which a comment may stand. */
function directory(view: DataView): { readonly count: number; readonly start: number } {
  const earliest = Math.max(0, view.byteLength - 22 - 0xffff);
  for (let at = view.byteLength - 22; at >= earliest; at -= 1) {
    if (view.getUint32(at, true) !== 0x06054b50) continue;
    const start = view.getUint32(at + 16, true);
    if (start === 0xffffffff) throw broken('it is written for files of more than 4 GB');
    return { count: view.getUint16(at + 10, true), start };
  }
  throw broken('it is cut off, or no ZIP file');
}

function partAt(view: DataView, at: number): Part {
  const method = view.getUint16(at + 10, true);
  const bytes = sizeAt(view, at, 24);
  const packedBytes = sizeAt(view, at, 20);
  const header = view.getUint32(at + 42, true);
  if (view.getUint32(header, true) !== 0x04034b50) throw broken('a part is not where the list says');
  const from = header + 30 + view.getUint16(header + 26, true) + view.getUint16(header + 28, true);
  if (from + packedBytes > view.byteLength) throw broken('a part leads out of the file');
  if (method !== 0 && method !== 8) throw broken('a part is packed in a way that workbooks are not');
  return {
    packed: new Uint8Array(view.buffer, view.byteOffset + from, packedBytes),
    isDeflated: method === 8,
    bytes,
    crc: view.getUint32(at + 16, true),
  };
}

/** A size of 32 bits, or of 64 in the extra field 1 where a writer prepared for large files. */
function sizeAt(view: DataView, at: number, field: 20 | 24): number {
  const size = view.getUint32(at + field, true);
  if (size !== 0xffffffff) return size;
  let extra = at + 46 + view.getUint16(at + 28, true);
  const end = extra + view.getUint16(at + 30, true);
  for (; extra + 4 <= end; extra += 4 + view.getUint16(extra + 2, true)) {
    if (view.getUint16(extra, true) !== 1) continue;
    const isSecond = field === 20 && view.getUint32(at + 24, true) === 0xffffffff;
    return Number(view.getBigUint64(extra + 4 + (isSecond ? 8 : 0), true));
  }
  throw broken('the size of a part is missing');
}

/** fflate throws errors of its own for what is no deflated data. */
function inflated(work: () => void): void {
  try {
    work();
  } catch (error) {
    if (error instanceof Error && 'code' in error && typeof error.code === 'number') throw broken('a part of it cannot be unpacked');
    throw error;
  }
}

export function broken(what: string): Fault {
  return new Fault('workbook-not-readable', `The file begins like an XLSX workbook, but ${what}.`);
}
