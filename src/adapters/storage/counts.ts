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
export function counts(session: Session): Pick<Store, 'counts' | 'revision'> {
  return {
    counts: () => session.read(async db => counted.parse((await sql`select ${sql.join(columns)}`.execute(db)).rows[0])),
    revision: async () => {
      const row = await session.read(db => db.selectFrom('workspace').select('revision').executeTakeFirstOrThrow());
      return row.revision;
    },
  };
}
