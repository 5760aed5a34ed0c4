import { sql } from 'kysely';
import type { ArchivedTable, Store } from '#app/store.ts';
import type { Session } from './session.ts';
import type { AnyRow } from './tableEntry.ts';
import { tableEntries } from './tables.ts';

const rowsAtOnce = 500;

/** Every row that an archive keeps. Damaged rows go with the others, as they are: an archive loses nothing. */
export function archivedRows(session: Session): Pick<Store, 'archived'> {
  return {
    archived: work =>
      session.readOnce(async db => {
        const tables: ArchivedTable[] = [];
        for (const [name, { order, isComputed, isBulky }] of tableEntries) {
          if (isComputed) continue;
          const counted = await sql<{ count: number | string }>`select count(*) as count from ${sql.table(name)}`.execute(db);
          const step = isBulky ? 1 : rowsAtOnce;
          tables.push({
            name,
            count: Number(counted.rows[0]?.count),
            async *rows() {
              let last: unknown;
              for (;;) {
                const after = last === undefined ? sql`1 = 1` : sql`${sql.ref(order)} > ${last}`;
                const { rows } =
                  await sql<AnyRow>`select * from ${sql.table(name)} where ${after} order by ${sql.ref(order)} limit ${sql.lit(step)}`.execute(
                    db,
                  );
                yield* rows;
                if (rows.length < step) return;
                last = rows.at(-1)?.[order];
              }
            },
          });
        }
        return work(tables);
      }),
  };
}
