import { type QueryExecutorProvider, sql } from 'kysely';
import { z } from 'zod';
import type { DocumentFile, Documents, Versioned } from '#app/documents.ts';
import { Fault } from '#core/errors.ts';
import { readDocument } from './keptTexts.ts';
import { insertRows, rowsInOrder } from './rowsOfTable.ts';
import type { Session } from './session.ts';
import type { AnyRow, DocumentEntry, TableEntry } from './tableEntry.ts';
import { tableEntries, tables } from './tables.ts';

/** The tables of the registry that keep documents. */
type DocumentTable = {
  [Name in keyof typeof tables]: (typeof tables)[Name] extends { readonly document: DocumentEntry } ? Name : never;
}[keyof typeof tables];

interface DemoMark {
  readonly isDemo?: boolean;
}

/** What a table says of a document in further columns. */
interface Beside<More extends DemoMark, Kept extends Versioned<DocumentFile>> {
  /** Their values when the document is put. */
  readonly columns: (more: More | undefined, earlier: AnyRow | undefined) => AnyRow;
  /** Undefined when they are damaged. */
  readonly read: (kept: Versioned<DocumentFile>, row: AnyRow) => Kept | undefined;
}

const documentRow = z.looseObject({ id: z.string(), version: z.number(), is_demo: z.number().default(0) });

/** The documents of every table of the registry that keeps some, under the table's name. */
export function documents(session: Session): Readonly<Record<DocumentTable, Documents<DocumentFile>>> {
  const opened: Partial<Record<DocumentTable, Documents<DocumentFile>>> = {};
  for (const table of documentTables) opened[table] = versionedDocuments(session, table);
  if (!areAllOpen(opened)) throw new Error('A table of documents was not opened.');
  return opened;
}

/** @internal */
export const documentTables = tableEntries.map(([name]) => name).filter(isDocumentTable);

function isDocumentTable(name: string): name is DocumentTable {
  return tableEntries.some(([table, { document }]) => table === name && document !== undefined);
}

function areAllOpen(
  opened: Partial<Record<DocumentTable, Documents<DocumentFile>>>,
): opened is Record<DocumentTable, Documents<DocumentFile>> {
  return documentTables.every(table => opened[table] !== undefined);
}

/** A person's own documents in a table, changeable and removable, each with the version that was seen. */
function versionedDocuments(session: Session, table: DocumentTable): Documents<DocumentFile> {
  return documentsWith(session, table, { columns: () => ({}), read: kept => kept });
}

export function documentsWith<More extends DemoMark, Kept extends Versioned<DocumentFile>>(
  session: Session,
  table: DocumentTable,
  beside: Beside<More, Kept>,
): Documents<DocumentFile, Kept, More> {
  const entry: TableEntry & { readonly document: DocumentEntry } = tables[table];
  const { noun, missing = 'document-not-found', damaged = 'document-not-valid' } = entry.document;

  const rowOf = async (db: QueryExecutorProvider, id: string) => {
    const [row] = (await sql`select * from ${sql.table(table)} where id = ${id}`.execute(db)).rows;
    return row === undefined ? undefined : documentRow.parse(row);
  };
  const kept = (row: z.output<typeof documentRow>): Kept | undefined => {
    const text = row[noun];
    const value = typeof text === 'string' ? readDocument(text) : undefined;
    return value === undefined ? undefined : beside.read({ value, version: row.version, isDemo: row.is_demo === 1 }, row);
  };
  const readable = (row: z.output<typeof documentRow>): Kept => {
    const read = kept(row);
    if (read !== undefined) return read;
    throw new Fault(damaged, `The ${noun} "${row.id}" is damaged in the database and cannot be read. It was left as it is.`);
  };
  const refuseUnseen = (version: number | undefined, seenVersion: number | null): void => {
    if ((version ?? null) !== seenVersion)
      throw new Fault('changed-meanwhile', 'It was changed in another window after it was opened here.');
  };

  return {
    list: async () => {
      const rows = await session.read(db => rowsInOrder(db, table, 'id'));
      return rows.map(row => kept(documentRow.parse(row))).filter(one => one !== undefined);
    },
    get: async id => {
      const row = await session.read(db => rowOf(db, id));
      return row === undefined ? undefined : readable(row);
    },
    put: (file, seenVersion, more) =>
      session.write(async trx => {
        const earlier = await rowOf(trx, file.id);
        refuseUnseen(earlier?.version, seenVersion);
        const isDemo = more?.isDemo ?? earlier?.is_demo === 1;
        const row = {
          id: file.id,
          [noun]: JSON.stringify(file),
          version: (earlier?.version ?? 0) + 1,
          ...(entry.demo === undefined ? {} : { is_demo: isDemo ? 1 : 0 }),
          ...beside.columns(more, earlier),
        };
        await sql`delete from ${sql.table(table)} where id = ${file.id}`.execute(trx);
        await insertRows(trx, table, [row]);
        return readable(documentRow.parse(row));
      }),
    remove: (id, seenVersion) =>
      session.write(async trx => {
        const earlier = await rowOf(trx, id);
        if (earlier === undefined) throw new Fault(missing, `The ${noun} is not in the workspace.`);
        refuseUnseen(earlier.version, seenVersion);
        await sql`delete from ${sql.table(table)} where id = ${id}`.execute(trx);
      }),
  };
}
