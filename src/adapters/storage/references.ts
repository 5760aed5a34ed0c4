import type { Store } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import { referenceFileText } from '#core/reference/referenceFile.ts';
import { digestOf, readReference } from './referenceBody.ts';
import type { Session } from './session.ts';

/** Imported composition tables. A dataset that is imported again takes the place of its earlier edition; a damaged one is passed over. */
export function references(session: Session): Pick<Store, 'listReferences' | 'referenceTables' | 'putReferences' | 'removeReference'> {
  return {
    listReferences: async () => {
      const rows = await session.read(db =>
        db
          .selectFrom('reference_tables')
          .select(['dataset', 'source', 'edition', 'foods', 'imported_at', 'digest'])
          .orderBy('dataset')
          .execute(),
      );
      return rows.map(({ imported_at, ...row }) => ({ ...row, importedAt: imported_at }));
    },
    referenceTables: async () => {
      const rows = await session.read(db => db.selectFrom('reference_tables').select('body').orderBy('dataset').execute());
      return rows.map(({ body }) => readReference(body)).filter(table => table !== undefined);
    },
    putReferences: async tables => {
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
    },
    removeReference: async dataset => {
      await session.write(async trx => {
        const rows = await trx.selectFrom('reference_tables').select('dataset').execute();
        const found = rows.find(row => row.dataset === dataset);
        if (found === undefined) throw new Fault('reference-not-found', 'The table is not in the workspace.');
        await trx.deleteFrom('reference_tables').where('dataset', '=', found.dataset).execute();
      });
    },
  };
}
