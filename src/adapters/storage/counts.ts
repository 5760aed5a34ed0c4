import { sql } from 'kysely';
import { z } from 'zod';
import { countNames, type Store } from '#app/store.ts';
import type { Session } from './session.ts';
import { tableEntries } from './tables.ts';

const counted = z.record(z.enum(countNames), z.coerce.number());

const columns = tableEntries.flatMap(([name, { counts = {}, demo }]) =>
  Object.entries(counts).map(
    ([countName, which]) =>
      sql`(select count(*) from ${sql.table(name)} where ${sql.raw(which === 'demo' ? (demo ?? '1 = 0') : '1 = 1')}) as ${sql.ref(countName)}`,
  ),
);

/** What is in the workspace, and how often it was written to. */
export function counts(session: Session): Pick<Store, 'counts' | 'categories' | 'revision' | 'writtenAt'> {
  return {
    counts: () => session.read(async db => counted.parse((await sql`select ${sql.join(columns)}`.execute(db)).rows[0])),
    categories: () =>
      session.read(async db => {
        const rows = await db
          .selectFrom('foods')
          .select(eb => [sql<string>`min(category)`.as('name'), eb.fn.countAll<number | string>().as('foods')])
          .where('category', 'is not', null)
          // Of the labels that are not withdrawn the last correction stands.
          .where(food =>
            food.exists(
              food
                .selectFrom('labels')
                .select('labels.id')
                .whereRef('labels.food_id', '=', 'foods.id')
                .where(label =>
                  label.not(
                    label.exists(
                      label.selectFrom('label_withdrawals').select('label_id').whereRef('label_withdrawals.label_id', '=', 'labels.id'),
                    ),
                  ),
                ),
            ),
          )
          .groupBy(sql`lower(category)`)
          .execute();
        return rows
          .map(({ name, foods }) => ({ name, foods: Number(foods) }))
          .sort((a, b) => b.foods - a.foods || a.name.localeCompare(b.name, 'en'));
      }),
    writtenAt: async () => {
      const row = await session.read(db => db.selectFrom('workspace').select('written_at').executeTakeFirstOrThrow());
      return row.written_at ?? undefined;
    },
    revision: async () => {
      const row = await session.read(db => db.selectFrom('workspace').select('revision').executeTakeFirstOrThrow());
      return row.revision;
    },
  };
}
