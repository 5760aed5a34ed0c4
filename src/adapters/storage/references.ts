import { createHash } from 'node:crypto';
import type { ReferenceRow } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import type { LargerTable } from '#core/reference/largerTable.ts';
import { referenceFileFromJson, referenceFileText } from '#core/reference/referenceFile.ts';
import type { Session } from './session.ts';

/** Imported composition tables. A dataset that is imported again takes the place of its earlier edition. */

export async function listReferences(session: Session): Promise<readonly ReferenceRow[]> {
  const rows = await session.read(db =>
    db
      .selectFrom('reference_tables')
      .select(['dataset', 'source', 'edition', 'foods', 'imported_at', 'digest'])
      .orderBy('dataset')
      .execute(),
  );
  return rows.map(({ imported_at, dataset, ...row }) => ({ ...row, dataset: dataset as ReferenceRow['dataset'], importedAt: imported_at }));
}

/** @throws Fault reference-not-valid when a body was damaged behind the program's back. */
export async function referenceTables(session: Session): Promise<readonly LargerTable[]> {
  const rows = await session.read(db => db.selectFrom('reference_tables').select(['dataset', 'body']).orderBy('dataset').execute());
  return rows.flatMap(({ dataset, body }) => referenceFileFromJson(body, dataset));
}

export async function putReferences(session: Session, tables: readonly LargerTable[]): Promise<void> {
  const rows = tables.map(table => {
    const body = referenceFileText([table]);
    const { dataset, source, edition, foods } = table;
    return { dataset, source, edition, foods: foods.length, imported_at: session.timestamp(), digest: digestOf(body), body };
  });
  await session.write(async trx => {
    for (const row of rows) {
      await trx.deleteFrom('reference_tables').where('dataset', '=', row.dataset).execute();
      await trx.insertInto('reference_tables').values(row).execute();
    }
  });
}

export async function removeReference(session: Session, dataset: string): Promise<void> {
  await session.write(async trx => {
    const { numDeletedRows } = await trx.deleteFrom('reference_tables').where('dataset', '=', dataset).executeTakeFirst();
    if (numDeletedRows === 0n) throw new Fault('reference-not-found', 'The table is not in the workspace.');
  });
}

/** Tells one body from another: estimates carry it. */
export function digestOf(body: string): string {
  return createHash('sha256').update(body).digest('hex').slice(0, 16);
}
