import { createHash } from 'node:crypto';
import type { ArchivedRow, DamagedRow } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import type { AnyRow, TableEntry } from './tableEntry.ts';
import { tableEntries } from './tables.ts';

const entries: ReadonlyMap<string, TableEntry> = new Map(tableEntries);

/** What the registry says of a table that an archive may hold. @throws Fault archive-not-valid */
export function archivedEntry(table: string): TableEntry {
  const entry = entries.get(table);
  if (entry === undefined || entry.isComputed)
    throw new Fault('archive-not-valid', `It holds rows of a table "${table}", and there is none.`);
  return entry;
}

/** A row of an archive as the database takes it. @throws Fault archive-not-valid when a column is missing, one too many, or of another kind */
export function rowOfArchive({ table, row }: ArchivedRow): AnyRow {
  const read = archivedEntry(table).row.safeParse(row);
  if (read.success) return read.data;
  const [problem] = read.error.issues;
  throw new Fault(
    'archive-not-valid',
    `A row of ${table} is not one of ours: at ${problem?.path.join('.') || 'the row'}, ${problem?.message ?? 'not readable'}.`,
  );
}

/** The columns of a row that hold what their reader cannot read. Such a row is damaged: it is kept as it is, and passed over. */
export function damagedColumns(table: string, row: AnyRow): readonly DamagedRow[] {
  const { key, texts = {} } = archivedEntry(table);
  const damaged = Object.entries(texts)
    .filter(([column, read]) => {
      const text = row[column];
      return text !== null && (typeof text !== 'string' || read(text) === undefined);
    })
    .map(([column]) => column);
  if (row.bytes instanceof Uint8Array && createHash('sha256').update(row.bytes).digest('hex') !== row.sha256) damaged.push('bytes');
  return damaged.map(column => ({ table, id: String(row[key]), column }));
}
