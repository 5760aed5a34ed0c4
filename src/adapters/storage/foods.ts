import { sql } from 'kysely';
import type { Store } from '#app/store.ts';
import { claimFood } from './claimFood.ts';
import { foodColumns, foodRow } from './rows.ts';
import type { Session } from './session.ts';

/** What is ours to say of a food; what its packages say are labels. */
export function foods(session: Session): Pick<Store, 'listFoods' | 'getFood' | 'changeFood'> {
  return {
    listFoods: (filter = {}) =>
      session.scan(db => {
        let query = db.selectFrom('foods').selectAll().orderBy(sql`lower(coalesce(maker, ''))`).orderBy(sql`lower(name)`).orderBy('id');
        if (filter.category !== undefined) query = query.where(sql<string>`lower(category)`, '=', filter.category.toLowerCase());
        for (const word of filter.search?.toLowerCase().split(/\s+/).filter(Boolean) ?? []) {
          // "%" and "_" are letters here, not wildcards.
          const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
          query = query.where(
            sql<boolean>`lower(name || ' ' || coalesce(maker, '') || ' ' || coalesce(gtin, '')) like ${pattern} escape '\\'`,
          );
        }
        return query;
      }, foodRow),
    getFood: async id => {
      const row = await session.read(db => db.selectFrom('foods').selectAll().where('id', '=', id).executeTakeFirst());
      return row === undefined ? undefined : foodRow(row);
    },
    changeFood: (foodId, seenVersion, change) =>
      session.write(async trx => {
        await claimFood(trx, foodId, seenVersion);
        const columns = foodColumns(change);
        if (Object.keys(columns).length > 0) await trx.updateTable('foods').set(columns).where('id', '=', foodId).execute();
        return foodRow(await trx.selectFrom('foods').selectAll().where('id', '=', foodId).executeTakeFirstOrThrow());
      }),
  };
}
