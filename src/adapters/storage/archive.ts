import { sql } from 'kysely';
import { z } from 'zod';
import type { Store, WorkspaceFile } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import { areRowsRefused } from './faults.ts';
import { hasRows, insertRows, rowsInOrder } from './rowsOfTable.ts';
import { batches, type Session } from './session.ts';
import type { AnyRow, TableEntry } from './tableEntry.ts';
import { tableEntries } from './tables.ts';

/** The workspace as a file, and back. */
export function archive(session: Session): Pick<Store, 'exportAll' | 'restore'> {
  return { exportAll: () => exportAll(session), restore: file => restore(session, file) };
}

const archived = tableEntries.filter(([, entry]) => entry.isComputed !== true);

const fileShape = z.object({
  platewrightWorkspace: z.literal(1),
  tables: z.strictObject(Object.fromEntries(archived.map(([name, entry]) => [name, rowsShape(entry)]))),
});

/** Only the first tables are in every file; those of a later migration are missing in files of before. */
function rowsShape({ row, migrations }: TableEntry) {
  const rows = z.array(row);
  return '1' in migrations ? rows : rows.default([]);
}

/** Damaged rows go with the others, as they are: a file loses nothing. */
async function exportAll(session: Session): Promise<WorkspaceFile> {
  return session.read(db =>
    // One transaction, so that the tables belong to the same moment.
    db.transaction().execute(async trx => {
      const file: Record<string, readonly AnyRow[]> = {};
      for (const [name, entry] of archived) file[name] = (await rowsInOrder(trx, name, entry.order)).map(row => archivedRow(row, entry));
      return { platewrightWorkspace: 1, tables: file };
    }),
  );
}

function archivedRow(row: AnyRow, { archived: forms = {} }: TableEntry): AnyRow {
  const inFile = Object.entries(forms).map(([column, form]) => [column, z.encode(form, row[column])]);
  return { ...row, ...Object.fromEntries(inFile) };
}

async function restore(session: Session, file: WorkspaceFile): Promise<void> {
  const read = fileShape.safeParse(file);
  if (!read.success) {
    const [problem] = read.error.issues;
    throw new Fault('workspace-file-not-valid', `At ${problem?.path.join('.') || 'the top'}: ${problem?.message ?? 'not readable'}.`);
  }
  try {
    await session.write(async trx => {
      for (const [name] of archived) {
        if (await hasRows(trx, name))
          throw new Fault('workspace-not-empty', 'A workspace file can only be restored into an empty workspace.');
      }
      for (const [name] of archived) for (const rows of batches(read.data.tables[name] ?? [])) await insertRows(trx, name, rows);
      await sql`update workspace set label_sequence = (select coalesce(max(sequence), 0) from labels)`.execute(trx);
    });
  } catch (error) {
    if (areRowsRefused(error))
      throw new Fault('workspace-file-not-valid', 'Its rows do not belong together: one names another that is missing, or stands twice.');
    throw error;
  }
}
