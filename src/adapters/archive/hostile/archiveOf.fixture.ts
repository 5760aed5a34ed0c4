/** Archives put together part by part, honest but for what is changed. */
import { randomFillSync } from 'node:crypto';
import { deflated, type Packed, stored, type ZipEntry, zipOf } from './zipBytes.fixture.ts';

/** An archive made to do harm, or broken as files break. Made only when it is asked for: some are large. */
export interface HostileArchive {
  readonly name: string;
  readonly make: () => Uint8Array<ArrayBuffer>;
  /** The fault that refuses it when it is looked at or restored, or "restored". */
  readonly gives: string;
  /** The fault of its client records, where it is restored with them under the passphrase "x". */
  readonly clients?: string;
}

export type Row = Readonly<Record<string, unknown>>;
export type Rows = Readonly<Record<string, readonly Row[] | Packed>>;
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
export function archive({ rows = shelf(), photos = {}, clients, manifest, entries = all => all }: Parts = {}): Uint8Array<ArrayBuffer> {
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

export const food = (id: string, more: Row = {}): Row => ({
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
export const printed = (more: Row = {}): Row => ({
  market: 'us',
  serving: { household: '1 cup', grams: 240 },
  basis: 'per-serving',
  state: 'as-packaged',
  front: [],
  panel: { sodiumMg: 600, energyKcal: 80 },
  otherColumns: [],
  ...more,
});
export const label = (id: string, sequence: number, more: Row = {}): Row => ({
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
export const photo = (id: string, { sha256 }: Packed, file: string, more: Row = {}): Row => ({
  id,
  label_id: 'l1',
  mime: 'image/png',
  sha256,
  file: `photos/${file}`,
  ...more,
});
/** A soup and its label. */
export const shelf = (more: Rows = {}): Rows => ({ foods: [food('f1')], labels: [label('l1', 1)], ...more });

export const blanks = Buffer.alloc(2 ** 20, ' ');
/** A megabyte that shrinks to a two hundredth: less than what is refused at sight. */
export function nearlyBlank(): Buffer {
  const block = Buffer.from(blanks);
  Buffer.from(randomFillSync(new Uint8Array(2_400)).map(byte => 97 + (byte % 16))).copy(block);
  return block;
}
const levels = 100_000;
export const deep = '['.repeat(levels) + ']'.repeat(levels);
