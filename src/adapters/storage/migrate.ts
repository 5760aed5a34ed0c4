import { type Kysely, sql } from 'kysely';
import { Fault } from '#core/errors.ts';
import type { Engine } from './engine.ts';
import type { Migration } from './migrations/migration.ts';
import type { Tables } from './schema.ts';
import type { TableEntry } from './tableEntry.ts';
import { tables } from './tables.ts';

/** The migrations that the entries of the registry name, in order. @throws Error on a gap, or on two migrations of one number. @internal */
export function migrationsOf(entries: readonly TableEntry[]): readonly Migration[] {
  const byNumber = new Map<number, Migration>();
  for (const { migrations } of entries) {
    for (const [number, migration] of Object.entries(migrations)) {
      const other = byNumber.get(Number(number));
      if (other !== undefined && other !== migration) throw new Error(`Two migrations have the number ${number}.`);
      byNumber.set(Number(number), migration);
    }
  }
  return Array.from({ length: byNumber.size }, (_, at) => {
    const migration = byNumber.get(at + 1);
    if (migration === undefined) throw new Error(`There is no migration ${at + 1}, but a later one.`);
    return migration;
  });
}

const newest = migrationsOf(Object.values(tables));

/**
 * Brings the tables to what this program needs, in one transaction. `migrations` are fewer in tests alone.
 * @throws Fault database-ahead when a newer program has been here.
 */
export async function migrate(db: Kysely<Tables>, engine: Engine, migrations = newest): Promise<void> {
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
    for (const migration of migrations.slice(Math.max(0, from))) await migration(trx, engine);
    if (from < migrations.length) await trx.updateTable('workspace').set({ schema_version: migrations.length }).execute();
  });
}
