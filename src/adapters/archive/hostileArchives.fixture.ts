import { randomFillSync } from 'node:crypto';
import { DataKey } from '#adapters/clients/dataKey.ts';
import { seal } from '#adapters/clients/seal.ts';
import { pictures } from '#app/pictures.fixture.ts';
import { deflated, endOf, type Packed, repeated, stored, type ZipEntry, zipOf } from './zipBytes.fixture.ts';

/** An archive made to do harm, or broken as files break. Made only when it is asked for: some are large. */
export interface HostileArchive {
  readonly name: string;
  readonly make: () => Uint8Array<ArrayBuffer>;
  /** The fault that refuses it when it is looked at or restored, or "restored". */
  readonly gives: string;
  /** The fault of its client records, where it is restored with them under the passphrase "x". */
  readonly clients?: string;
}

type Row = Readonly<Record<string, unknown>>;
type Rows = Readonly<Record<string, readonly Row[] | Packed>>;
interface Parts {
  readonly rows?: Rows;
  /** Below photos/. */
  readonly photos?: Readonly<Record<string, Packed>>;
  readonly clients?: unknown;
  /** In the place of the honest list of contents. */
  readonly manifest?: (honest: Record<string, unknown>) => string | Packed;
  readonly entries?: (honest: readonly ZipEntry[]) => readonly ZipEntry[];
}

const isPacked = (rows: readonly Row[] | Packed): rows is Packed => 'data' in rows;

/** An archive whose list of contents agrees with it, but for what is changed. */
function archive({ rows = shelf(), photos = {}, clients, manifest, entries = all => all }: Parts = {}): Uint8Array<ArrayBuffer> {
  const tables = Object.entries(rows).map(([table, given]): ZipEntry => {
    const packed = isPacked(given) ? given : deflated(given.map(row => `${JSON.stringify(row)}\n`).join(''));
    return { name: `tables/${table}.jsonl`, ...packed };
  });
  const named = Object.entries(photos).map(([name, packed]): ZipEntry => ({ name: `photos/${name}`, ...packed }));
  const sealed = clients === undefined ? [] : [{ name: 'clients.json', ...stored(JSON.stringify(clients)) }];
  const all = [...named, ...tables, ...sealed];
  const honest = {
    platewrightArchive: 1,
    madeAt: '2026-06-15T12:00:00.000Z',
    version: '0.1.0',
    rows: Object.fromEntries(Object.entries(rows).map(([table, given]) => [table, isPacked(given) ? 1 : given.length])),
    ...(clients === undefined ? {} : { clients: { records: 1, opensWith: 'passphrase' } }),
    files: all.map(({ name, size, sha256 }) => ({ name: String(name), bytes: size, sha256 })),
  };
  const list = manifest?.(honest) ?? JSON.stringify(honest);
  return zipOf(entries([...all, { name: 'manifest.json', ...(typeof list === 'string' ? stored(list) : list) }]));
}

const food = (id: string, more: Row = {}): Row => ({
  id,
  name: `Soup ${id}`,
  maker: null,
  category: 'soups and broths',
  gtin: null,
  density_g_per_ml: null,
  grams_per_measure: null,
  is_demo: 0,
  version: 1,
  ...more,
});
const printed = (more: Row = {}): Row => ({
  market: 'us',
  serving: { household: '1 cup', grams: 240 },
  basis: 'per-serving',
  state: 'as-packaged',
  front: [],
  panel: { sodiumMg: 600, energyKcal: 80 },
  otherColumns: [],
  ...more,
});
const label = (id: string, sequence: number, more: Row = {}): Row => ({
  id,
  food_id: 'f1',
  kind: 'read',
  printed: JSON.stringify(printed()),
  corrects_label_id: null,
  reason: null,
  added_at: '2026-06-15T12:00:00.000Z',
  sequence,
  reading_sequence: sequence,
  ...more,
});
const photo = (id: string, { sha256 }: Packed, file: string, more: Row = {}): Row => ({
  id,
  label_id: 'l1',
  mime: 'image/png',
  sha256,
  file: `photos/${file}`,
  ...more,
});
/** A soup and its label. */
const shelf = (more: Rows = {}): Rows => ({ foods: [food('f1')], labels: [label('l1', 1)], ...more });

const blanks = Buffer.alloc(2 ** 20, ' ');
/** A megabyte that shrinks to a two hundredth: less than what is refused at sight. */
function nearlyBlank(): Buffer {
  const block = Buffer.from(blanks);
  Buffer.from(randomFillSync(new Uint8Array(2_400)).map(byte => 97 + (byte % 16))).copy(block);
  return block;
}
const levels = 100_000;
const deep = '['.repeat(levels) + ']'.repeat(levels);
const badPicture = (name: string, content: string | Uint8Array, more: Row = {}): HostileArchive => ({
  name: `a picture that is ${name}`,
  make: () => {
    const packed = stored(content);
    return archive({ rows: shelf({ photos: [photo('p1', packed, '1.png', more)] }), photos: { '1.png': packed } });
  },
  gives: 'restored',
});

const bombs: readonly HostileArchive[] = [
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

const lies: readonly HostileArchive[] = [
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

const manifests: readonly HostileArchive[] = [
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

const withRows = (name: string, rows: () => Rows, gives: string): HostileArchive => ({
  name,
  make: () => archive({ rows: rows() }),
  gives,
});
const ids = ['../../x', 'a/b?c#d', '"\'`', "x'; drop table foods; --", '__proto__', 'a\0b', '\ud800', '', ' ', '%00', 'x'.repeat(10_000)];

const rows: readonly HostileArchive[] = [
  withRows(
    'a row of a million columns',
    () => ({ foods: [{ ...food('f1'), ...Object.fromEntries(Array.from({ length: 1_000_000 }, (_, at) => [`c${at}`, 1])) }] }),
    'archive-not-valid',
  ),
  withRows('a label 100,000 levels deep', () => shelf({ labels: [label('l1', 1, { printed: deep })] }), 'restored'),
  withRows('a row 100,000 levels deep', () => shelf({ plates: deflated(`{"id":${deep}}\n`) }), 'archive-not-valid'),
  withRows(
    'labels that correct each other in a circle',
    () =>
      shelf({
        labels: [1, 2, 3].map(at =>
          label(`l${at}`, at, { kind: 'correction', corrects_label_id: `l${(at % 3) + 1}`, reading_sequence: 1 }),
        ),
      }),
    'restored',
  ),
  withRows(
    'a label that corrects itself',
    () => shelf({ labels: [label('l1', 1, { kind: 'correction', corrects_label_id: 'l1' })] }),
    'restored',
  ),
  withRows('a label of a food that is not there', () => shelf({ labels: [label('l1', 1, { food_id: 'nobody' })] }), 'archive-not-valid'),
  withRows('places that are negative', () => shelf({ labels: [label('l1', -1), label('l2', -(2 ** 52))] }), 'archive-not-valid'),
  withRows('places at the end of numbers', () => shelf({ labels: [label('l1', Number.MAX_SAFE_INTEGER)] }), 'archive-not-valid'),
  withRows('places that are beyond numbers', () => shelf({ labels: [label('l1', 1e300)] }), 'archive-not-valid'),
  withRows('places that are taken', () => shelf({ labels: [label('l1', 1), label('l2', 1)] }), 'archive-not-valid'),
  withRows(
    'versions at the end of numbers',
    () => shelf({ foods: [food('f1', { version: Number.MAX_SAFE_INTEGER })] }),
    'archive-not-valid',
  ),
  withRows(
    'days that are none',
    () =>
      shelf({
        labels: ['+275760-09-14T00:00:00Z', '-000001-01-01', '2026-02-30', 'yesterday', '', '9'.repeat(400)].map((day, at) =>
          label(`l${at + 1}`, at + 1, { added_at: day, printed: JSON.stringify(printed({ readOn: day })) }),
        ),
        label_rechecks: [{ label_id: 'l1', due_on: 'never' }],
        label_withdrawals: [{ label_id: 'l2', reason: '', withdrawn_at: '\0' }],
        imports: [{ id: 'i', file_name: '../../x', imported_at: 'x', added: 1, joined: 0, undone_at: 'x' }],
      }),
    'restored',
  ),
  withRows(
    'identities of slashes, quotes, SQL and nothing',
    () => ({
      foods: ids.map(id => food(id, { name: id, category: id })),
      labels: ids.map((id, at) => label(id, at + 1, { food_id: id })),
      plates: ids.map(id => ({ id, plate: JSON.stringify({ id, title: id }), version: 1, is_demo: 0 })),
      guides: ids.map(id => ({ id, guide: JSON.stringify({ id, title: id }), published: null, version: 1, is_demo: 0 })),
    }),
    'restored',
  ),
  withRows(
    'documents that are something else',
    () =>
      shelf({
        plates: [{ id: 'a', plate: '{"id":"b"}', version: 1, is_demo: 0 }],
        yardsticks: [{ id: 'a', yardstick: '{"id":"a","title":[],"tests":{"__proto__":1}}', version: 1 }],
        saved_surveys: [{ id: 'a', survey: 'null', version: 1 }],
        guides: [{ id: 'a', guide: '{"id":"a","survey":7}', published: '{"guide":{"id":"a"},"labels":[]}', version: 1, is_demo: 0 }],
        handouts: [{ id: 'a', handout: '{"id":"a","topic":{"x":[[[]]]}}', version: 1, is_demo: 0 }],
      }),
    'restored',
  ),
  withRows(
    'fifty thousand categories',
    () => ({ foods: Array.from({ length: 50_000 }, (_, at) => food(`f${at}`, { category: `c${at}` })) }),
    'restored',
  ),
  withRows(
    'a name of 5 MB',
    () => shelf({ foods: [food('f1', { name: 'x'.repeat(5_000_000), category: 'y'.repeat(5_000_000) })] }),
    'restored',
  ),
  withRows('a table that nobody knows', () => shelf({ accounts: [{ id: 1 }] }), 'archive-newer'),
  withRows(
    'a statement of 9 MB of brackets',
    () => shelf({ labels: [label('l1', 1, { printed: JSON.stringify(printed({ statement: 'a ('.repeat(3_000_000) })) })] }),
    'restored',
  ),
];

const photos: readonly HostileArchive[] = [
  badPicture('a page', '<!doctype html><script>alert(1)</script>', { mime: 'text/html' }),
  badPicture('SVG with a script', '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>', { mime: 'image/svg+xml' }),
  badPicture('a script that says it is PNG', 'alert(1)'),
  badPicture('the head of a PNG and then a page', Buffer.concat([pictures.png.subarray(0, 40), Buffer.from('<script>alert(1)</script>')])),
  badPicture('of no bytes', ''),
  badPicture('under another digest', 'x', { sha256: 'a'.repeat(64) }),
  {
    name: 'a picture that is the list of contents',
    make: () => archive({ rows: shelf({ photos: [photo('p1', stored(''), '../manifest.json')] }) }),
    gives: 'archive-not-valid',
  },
];

const wrap = (more: Row = {}): Row => ({
  id: '1',
  kind: 'passphrase',
  form: 2,
  n: 2 ** 17,
  r: 8,
  p: 1,
  salt: 'AAAA',
  sealedSecret: 'AAAA',
  ...more,
});
const withClients = (name: string, copy: () => Row, clients: string, opensWith = 'passphrase'): HostileArchive => ({
  name: `client records ${name}`,
  make: () => archive({ clients: copy(), manifest: honest => JSON.stringify({ ...honest, clients: { records: 1, opensWith } }) }),
  gives: 'restored',
  clients,
});
/** Sealed under a key that lies beside it, as whoever makes an archive can: what is sealed is any bytes. */
function keyed(more: (key: DataKey) => Row): Row {
  const key = new DataKey(Buffer.alloc(64, 7));
  return { format: 2, wraps: [], key: key.bytes().toString('base64'), rows: [], ...more(key) };
}
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

const clients: readonly HostileArchive[] = [
  withClients('at a cost of 128 GB', () => ({ format: 2, wraps: [wrap({ n: 2 ** 30, r: 1 })], rows: [] }), 'client-copy-not-valid'),
  withClients('at a cost of 2 GB', () => ({ format: 2, wraps: [wrap({ n: 2 ** 21 })], rows: [] }), 'client-copy-not-valid'),
  withClients('at a cost of sixteen times the work', () => ({ format: 2, wraps: [wrap({ p: 16 })], rows: [] }), 'client-copy-not-valid'),
  withClients('at a cost of nothing', () => ({ format: 2, wraps: [wrap({ n: 0, r: 0, p: 0 })], rows: [] }), 'client-copy-not-valid'),
  withClients(
    'under ten thousand passphrases',
    () => ({ format: 2, wraps: Array.from({ length: 10_000 }, (_, at) => wrap({ id: String(at) })), rows: [] }),
    'client-copy-not-valid',
  ),
  withClients('under one identity twice', () => ({ format: 2, wraps: [wrap(), wrap()], rows: [] }), 'client-copy-not-valid'),
  withClients(
    'of rows of any length',
    () => keyed(() => ({ rows: ['', 'AA==', 'A'.repeat(4_000)].map(row => ({ row, body: 'AA==' })) })),
    'restored',
    'key',
  ),
  withClients(
    'with an index that is no JSON',
    () => keyed(key => ({ index: base64(key.sealIndex(Buffer.from('no JSON {'))) })),
    'restored',
    'key',
  ),
  withClients('100,000 levels deep', () => keyed(key => deepRecord(key)), 'restored', 'key'),
  withClients(
    'that are other JSON',
    () => keyed(key => sealedRecord(key, '{"id":"x","version":1,"name":{"__proto__":1}}')),
    'restored',
    'key',
  ),
  withClients('that are none', () => ({ rows: deep.slice(0, 10) }), 'client-copy-not-valid'),
];

function deepRecord(key: DataKey): Row {
  return sealedRecord(key, `{"id":"x","version":1,"name":${deep}}`);
}

/** Any text in the place of a record. */
function sealedRecord(key: DataKey, json: string): Row {
  const row = key.rowOf('x');
  const bound = Buffer.concat([Buffer.from('platewright client 2 '), row]);
  return { rows: [{ row: base64(row), body: base64(seal(key.bytes().subarray(0, 32), bound, Buffer.from(json))) }] };
}

const asBytes = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(Buffer.from(text));
const workspaceFiles: readonly HostileArchive[] = [
  { name: 'a workspace file of 450 MB', make: () => new Uint8Array(Buffer.alloc(450 * 2 ** 20, '[')), gives: 'workspace-file-not-valid' },
  {
    name: 'a workspace file of 99 MB of small lists',
    make: () =>
      new Uint8Array(
        Buffer.concat([Buffer.from('{"platewrightWorkspace":1,"tables":{"x":['), Buffer.alloc(99 * 10 ** 6, '[],'), Buffer.from('[]]}}')]),
      ),
    gives: 'archive-not-valid',
  },
  {
    name: 'a workspace file with a text of 450 MB',
    make: () =>
      new Uint8Array(
        Buffer.concat([
          Buffer.from('{"platewrightWorkspace":1,"tables":{"foods":[{"id":"'),
          Buffer.alloc(450 * 2 ** 20, 'a'),
          Buffer.from('"}]}}'),
        ]),
      ),
    gives: 'workspace-file-not-valid',
  },
  {
    name: 'a workspace file 100,000 levels deep',
    make: () => asBytes(`{"platewrightWorkspace":1,"tables":{"foods":${deep}}}`),
    gives: 'workspace-file-not-valid',
  },
  {
    name: 'a workspace file with a table twice',
    make: () => asBytes(`{"platewrightWorkspace":1,"tables":{"foods":[{"id":7}],"foods":[${JSON.stringify(food('f1'))}]}}`),
    gives: 'archive-not-valid',
  },
  {
    name: 'a workspace file with a table that nobody knows',
    make: () => asBytes('{"platewrightWorkspace":1,"tables":{"__proto__":[{"id":1}],"x":[{}]}}'),
    gives: 'archive-not-valid',
  },
  { name: 'no bytes', make: () => new Uint8Array(), gives: 'workspace-file-not-valid' },
];

export const hostileArchives: readonly HostileArchive[] = [
  ...bombs,
  ...lies,
  ...manifests,
  ...rows,
  ...photos,
  ...clients,
  ...workspaceFiles,
];
