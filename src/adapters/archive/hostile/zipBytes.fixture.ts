import { createHash } from 'node:crypto';
import { constants, crc32, deflateRawSync } from 'node:zlib';

/** What is packed, with what a ZIP file says of it. */
export interface Packed {
  /** 0: as it is. 8: deflated. */
  readonly method: number;
  readonly data: Uint8Array;
  readonly crc: number;
  readonly size: number;
  /** Of what comes out. */
  readonly sha256: string;
}

export function stored(content: string | Uint8Array): Packed {
  const data = Buffer.from(content);
  return { method: 0, data, crc: crc32(data), size: data.length, sha256: digest([data]) };
}

export function deflated(content: string | Uint8Array): Packed {
  const data = Buffer.from(content);
  return { method: 8, data: deflateRawSync(data, { level: 1 }), crc: crc32(data), size: data.length, sha256: digest([data]) };
}

/** A block many times over between a head and a tail, without ever holding what comes out: each block is packed by itself (RFC 1951, a full flush). */
export function repeated(block: Buffer, times: number, head = '', tail = ''): Packed {
  const flushed = (bytes: Buffer): Buffer => deflateRawSync(bytes, { level: 9, finishFlush: constants.Z_FULL_FLUSH });
  const [first, last] = [Buffer.from(head), Buffer.from(tail)];
  const packed = flushed(block);
  const hash = createHash('sha256').update(first);
  let crc = crc32(first);
  for (let time = 0; time < times; time += 1) {
    hash.update(block);
    crc = crc32(block, crc);
  }
  const data = Buffer.concat([flushed(first), ...Array.from({ length: times }, () => packed), flushed(last), Buffer.from([3, 0])]);
  const size = first.length + block.length * times + last.length;
  return { method: 8, data, crc: crc32(last, crc), size, sha256: hash.update(last).digest('hex') };
}

export interface ZipEntry extends Packed {
  readonly name: string | Buffer;
  /** What the directory says in the place of the truth. */
  readonly lies?: Readonly<Partial<Record<'flags' | 'method' | 'crc' | 'packedBytes' | 'size' | 'offset' | 'attributes', number>>>;
  /** The entry has no data of its own: its place is that of the entry of this number. */
  readonly liesAt?: number;
}

/** What the end says in the place of the truth: how many files, where their directory begins, and where the end itself does. */
interface EndLies {
  readonly count?: bigint;
  readonly offset?: bigint;
  readonly end?: bigint;
}

/** A ZIP file by hand (APPNOTE 6.3.10, 4.3): sizes from 4 GB on stand in a ZIP64 field. `lies` holds for the end of its directory. */
export function zipOf(entries: readonly ZipEntry[], lies: EndLies = {}): Uint8Array<ArrayBuffer> {
  const parts: Uint8Array[] = [];
  const offsets: number[] = [];
  let at = 0;
  const add = (bytes: Uint8Array): void => {
    parts.push(bytes);
    at += bytes.length;
  };
  for (const { name, method, data, crc, size, liesAt } of entries) {
    offsets.push(liesAt === undefined ? at : offsets[liesAt]!);
    if (liesAt !== undefined) continue;
    const local = Buffer.alloc(30);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(45, 4);
    local.writeUInt16LE(method, 8);
    local.writeUInt32LE(crc, 14);
    local.writeUInt32LE(Math.min(data.length, 0xffffffff), 18);
    local.writeUInt32LE(Math.min(size, 0xffffffff), 22);
    const bytes = Buffer.from(name);
    local.writeUInt16LE(bytes.length, 26);
    add(local);
    add(bytes);
    add(data);
  }
  const start = at;
  for (const [index, entry] of entries.entries()) add(central(entry, offsets[index]!));
  add(endOf(entries.length, at - start, start, lies));
  return new Uint8Array(Buffer.concat(parts));
}

function central({ name, method, data, crc, size, lies = {} }: ZipEntry, offset: number): Buffer {
  const bytes = Buffer.from(name);
  const told = lies.size ?? size;
  const extra = told > 0xfffffffe ? zip64(told) : Buffer.alloc(0);
  const head = Buffer.alloc(46);
  head.writeUInt32LE(0x02014b50, 0);
  head.writeUInt16LE(0x0300 | 45, 4);
  head.writeUInt16LE(45, 6);
  head.writeUInt16LE(lies.flags ?? 0x800, 8);
  head.writeUInt16LE(lies.method ?? method, 10);
  head.writeUInt32LE(lies.crc ?? crc, 16);
  head.writeUInt32LE(lies.packedBytes ?? data.length, 20);
  head.writeUInt32LE(Math.min(told, 0xffffffff), 24);
  head.writeUInt16LE(bytes.length, 28);
  head.writeUInt16LE(extra.length, 30);
  head.writeUInt32LE(lies.attributes ?? (0o100600 << 16) >>> 0, 38);
  head.writeUInt32LE(lies.offset ?? offset, 42);
  return Buffer.concat([head, bytes, extra]);
}

function zip64(size: number): Buffer {
  const extra = Buffer.alloc(12);
  extra.writeUInt16LE(1, 0);
  extra.writeUInt16LE(8, 2);
  extra.writeBigUInt64LE(BigInt(size), 4);
  return extra;
}

/** ZIP64's end, its locator, and the plain end that points to them. */
export function endOf(count: number, bytes: number, start: number, lies: EndLies = {}): Buffer {
  const end = Buffer.alloc(56 + 20 + 22);
  end.writeUInt32LE(0x06064b50, 0);
  end.writeBigUInt64LE(44n, 4);
  end.writeUInt16LE(45, 12);
  end.writeUInt16LE(45, 14);
  end.writeBigUInt64LE(lies.count ?? BigInt(count), 24);
  end.writeBigUInt64LE(lies.count ?? BigInt(count), 32);
  end.writeBigUInt64LE(BigInt(bytes), 40);
  end.writeBigUInt64LE(lies.offset ?? BigInt(start), 48);
  end.writeUInt32LE(0x07064b50, 56);
  end.writeBigUInt64LE(lies.end ?? BigInt(start + bytes), 64);
  end.writeUInt32LE(1, 72);
  end.writeUInt32LE(0x06054b50, 76);
  end.writeUInt16LE(0xffff, 84);
  end.writeUInt16LE(0xffff, 86);
  end.writeUInt32LE(0xffffffff, 88);
  end.writeUInt32LE(0xffffffff, 92);
  return end;
}

function digest(parts: readonly Uint8Array[]): string {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest('hex');
}
