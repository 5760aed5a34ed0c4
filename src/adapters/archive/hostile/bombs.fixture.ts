/** Archives that unpack to more than they seem. */
import { archive, blanks, type HostileArchive, label, nearlyBlank, photo, printed, type Row, shelf } from './archiveOf.fixture.ts';
import { endOf, repeated, stored, zipOf } from './zipBytes.fixture.ts';

export const bombs: readonly HostileArchive[] = [
  {
    name: 'a table of 10 GB of blanks in 10 MB',
    make: () => {
      const { data, ...rest } = repeated(blanks, 16);
      const times = 640;
      const packed = { ...rest, data: Buffer.concat(Array.from({ length: times }, () => data)), size: rest.size * times };
      return archive({ rows: shelf({ plates: packed }) });
    },
    gives: 'archive-not-valid',
  },
  {
    name: 'a line of 1 GB',
    make: () => archive({ rows: shelf({ plates: repeated(nearlyBlank(), 1_000) }) }),
    gives: 'archive-not-valid',
  },
  {
    name: 'a line of 90 MB that is a label',
    make: () => {
      const [before, after] = JSON.stringify(label('l1', 1, { printed: JSON.stringify(printed({ statement: '@' })) })).split('@');
      return archive({ rows: shelf({ labels: repeated(nearlyBlank(), 90, before, `${after}\n`) }) });
    },
    gives: 'archive-not-valid',
  },
  {
    name: 'a thousand names of one picture of 8 MB',
    make: () => {
      const packed = stored(Buffer.alloc(8 * 2 ** 20, 1));
      const names = Array.from({ length: 1_000 }, (_, at) => `${at}.png`);
      return archive({
        rows: shelf({ photos: names.map(name => photo(name, packed, name)) }),
        photos: Object.fromEntries(names.map(name => [name, packed])),
        entries: all => all.map((entry, at) => (at > 0 && String(entry.name).startsWith('photos/') ? { ...entry, liesAt: 0 } : entry)),
      });
    },
    gives: 'archive-not-valid',
  },
  {
    name: 'a picture of 8 MB that 2,000 rows name',
    make: () => {
      const packed = stored(Buffer.alloc(8 * 2 ** 20, 1));
      const rows = Array.from({ length: 2_000 }, (_, at) => photo(String(at), packed, '1.png'));
      return archive({ rows: shelf({ photos: rows }), photos: { '1.png': packed } });
    },
    gives: 'archive-not-valid',
  },
  {
    name: 'a thousand pictures of 15 MB in 15 kB each',
    make: () => {
      const packed = repeated(blanks, 15);
      const names = Array.from({ length: 1_000 }, (_, at) => `${at}.png`);
      return archive({
        rows: shelf({ photos: names.map(name => photo(name, packed, name)) }),
        photos: Object.fromEntries(names.map(name => [name, packed])),
      });
    },
    gives: 'archive-not-valid',
  },
  { name: 'an archive in an archive', make: () => zipOf([{ name: 'a.zip', ...stored(archive()) }]), gives: 'archive-not-valid' },
  {
    name: 'a list of a million files',
    make: () => archive({ manifest: honest => stored(JSON.stringify({ ...honest, files: manyFiles(1_000_000) })) }),
    gives: 'archive-not-valid',
  },
  {
    name: 'a list of 400,000 files that are not there',
    make: () => archive({ manifest: honest => stored(JSON.stringify({ ...honest, files: manyFiles(400_000) })) }),
    gives: 'archive-not-valid',
  },
  { name: 'two million files in the directory', make: () => manyEntries(2_000_000), gives: 'archive-not-valid' },
  { name: '190,000 files in the directory', make: () => manyEntries(190_000), gives: 'archive-not-valid' },
];

function manyFiles(count: number): readonly Row[] {
  return Array.from({ length: count }, (_, at) => ({ name: `photos/${at}`, bytes: 1, sha256: 'a'.repeat(64) }));
}

/** A directory alone, quickly made. */
function manyEntries(count: number): Uint8Array<ArrayBuffer> {
  const start = Buffer.from('PK\u0003\u0004'.padEnd(30, '\0'), 'latin1');
  const directory = Buffer.alloc(count * 53);
  for (let at = 0; at < count; at += 1) {
    directory.writeUInt32LE(0x02014b50, at * 53);
    directory.writeUInt16LE(7, at * 53 + 28);
    directory.write(at.toString(36).padStart(7, 'a'), at * 53 + 46, 'latin1');
  }
  return new Uint8Array(Buffer.concat([start, directory, endOf(count, directory.length, start.length)]));
}
