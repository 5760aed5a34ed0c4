import { type Kysely, sql } from 'kysely';
import { Fault } from '#core/errors.ts';
import type { Engine } from './engine.ts';
import { up as workspace } from './migrations/0001-workspace.ts';
import { up as mineralEstimates } from './migrations/0002-mineral-estimates.ts';
import { up as guides } from './migrations/0003-guides.ts';
import { up as reference } from './migrations/0004-reference.ts';
import { up as handouts } from './migrations/0005-handouts.ts';
import type { Tables } from './schema.ts';

/** In order; a migration that has been released is never changed. */
const migrations = [workspace, mineralEstimates, guides, reference, handouts];

/**
 * Brings the tables to what this program needs, in one transaction.
 * @throws Fault database-ahead when a newer program has been here.
 */
export async function migrate(db: Kysely<Tables>, engine: Engine): Promise<void> {
  await db.transaction().execute(async trx => {
    if (engine.migrationLock !== undefined) await sql.raw(engine.migrationLock).execute(trx);
    await sql
      .raw(
        `create table if not exists workspace (id ${engine.types.integer} primary key check (id = 1), schema_version ${engine.types.integer} not null,
          revision ${engine.types.integer} not null, label_sequence ${engine.types.integer} not null, is_purging ${engine.types.integer} not null)${engine.types.strict}`,
      )
      .execute(trx);
    const row = await trx.selectFrom('workspace').select('schema_version').executeTakeFirst();
    if (row === undefined)
      await trx.insertInto('workspace').values({ id: 1, schema_version: 0, revision: 0, label_sequence: 0, is_purging: 0 }).execute();
    const from = row?.schema_version ?? 0;
    if (from > migrations.length) {
      throw new Fault('database-ahead', `The database has version ${from}, this program knows versions up to ${migrations.length}.`);
    }
    for (let version = from; version < migrations.length; version++) await migrations[version]!(trx as unknown as Kysely<never>, engine);
    if (from < migrations.length) await trx.updateTable('workspace').set({ schema_version: migrations.length }).execute();
  });
}
