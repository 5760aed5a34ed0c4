/** Archives whose directory or list of contents says what is not so. */
import { archive, deep, type HostileArchive, photo, shelf } from './archiveOf.fixture.ts';
import { stored, type ZipEntry, zipOf } from './zipBytes.fixture.ts';

const lyingEntry = (name: string, change: (entry: ZipEntry) => Partial<ZipEntry>, which = 'tables/labels.jsonl'): HostileArchive => ({
  name,
  make: () => archive({ entries: all => all.map(entry => (entry.name === which ? { ...entry, ...change(entry) } : entry)) }),
  gives: 'archive-not-valid',
});
const moreEntry = (name: string, entry: Partial<ZipEntry>): HostileArchive => ({
  name,
  make: () => archive({ entries: all => [...all, { name: 'x', ...stored('x'), ...entry }] }),
  gives: 'archive-not-valid',
});

export const lies: readonly HostileArchive[] = [
  lyingEntry('a file that says it is smaller', ({ size }) => ({ lies: { size: size - 1 } })),
  lyingEntry('a file that says it has 2^50 bytes', () => ({ lies: { size: 2 ** 50 } })),
  lyingEntry('a file that says it is packed in 4 GB', () => ({ lies: { packedBytes: 0xfffffffe } })),
  lyingEntry('a file that lies beyond the end', () => ({ lies: { offset: 0x7fffffff } })),
  lyingEntry('a file that says it is encrypted', () => ({ lies: { flags: 1 } })),
  lyingEntry('a file packed in a way that is none', () => ({ lies: { method: 99 } })),
  lyingEntry('a list of contents that says it is smaller', () => ({ lies: { size: 1 } }), 'manifest.json'),
  {
    name: 'a directory of 2^40 files',
    make: () => zipOf([{ name: 'x', ...stored('x') }], { count: 2n ** 40n }),
    gives: 'archive-not-valid',
  },
  {
    name: 'a directory that begins at 2^60',
    make: () => zipOf([{ name: 'x', ...stored('x') }], { offset: 2n ** 60n }),
    gives: 'archive-not-valid',
  },
  { name: 'an end that lies at 2^60', make: () => zipOf([{ name: 'x', ...stored('x') }], { end: 2n ** 60n }), gives: 'archive-not-valid' },
  ...['../../outside', '/etc/cron.d/x', 'C:\\x', 'a\\..\\b', 'a\0b', 'tables/foods.jsonl', '__proto__', ''].map(name =>
    moreEntry(`a file more, named ${JSON.stringify(name)}`, { name }),
  ),
  {
    name: 'a link to a file of this machine for a picture',
    make: () => {
      const packed = stored('/etc/passwd');
      return archive({
        rows: shelf({ photos: [photo('p1', packed, '1.png')] }),
        photos: { '1.png': packed },
        entries: all => all.map(entry => ({ ...entry, lies: { attributes: (0o120777 << 16) >>> 0 } })),
      });
    },
    gives: 'restored',
  },
  ...Array.from(
    { length: 9 },
    (_, at): HostileArchive => ({
      name: `cut off after ${at + 1} tenths`,
      make: () => archive().slice(0, Math.floor((archive().length * (at + 1)) / 10)),
      gives: 'archive-not-valid',
    }),
  ),
];

const withManifest = (
  name: string,
  manifest: (honest: Record<string, unknown>) => string,
  gives = 'archive-not-valid',
): HostileArchive => ({
  name: `a list of contents ${name}`,
  make: () => archive({ manifest }),
  gives,
});

export const manifests: readonly HostileArchive[] = [
  withManifest('100,000 levels deep', () => deep),
  withManifest('with rows 100,000 levels deep', honest => JSON.stringify(honest).replace('"rows":{', `"rows":{"x":${deep},`)),
  withManifest('with a prototype', honest => JSON.stringify(honest).replace('"rows":{', '"rows":{"__proto__":{"foods":1},'), 'restored'),
  withManifest('of a newer program', honest => JSON.stringify({ ...honest, platewrightArchive: 1e300 }), 'archive-newer'),
  withManifest('that is empty', () => ''),
  withManifest(
    'that names one file twice',
    honest => JSON.stringify({ ...honest, files: Array.isArray(honest.files) ? [...honest.files, honest.files[0]] : [] }),
    'restored',
  ),
  withManifest('with numbers beyond numbers', honest => JSON.stringify(honest).replace('"foods":1', '"foods":1e999')),
];
