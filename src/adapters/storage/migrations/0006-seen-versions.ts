import { type QueryExecutorProvider, sql } from 'kysely';
import type { Engine } from '../engine.ts';

/** Saved surveys have a version, so that nobody overwrites what was not seen; the workspace knows its newest writes, the day of the last one, and its beginning. */
export async function up(db: QueryExecutorProvider, engine: Engine): Promise<void> {
  const { integer } = engine.types;
  for (const statement of [
    `alter table saved_surveys add column version ${integer} not null default 1`,
    `alter table workspace add column recent_writes text not null default ''`,
    `alter table workspace add column written_at text`,
    `alter table workspace add column is_beginning ${integer} not null default 0`,
  ]) {
    await sql.raw(statement).execute(db);
  }
}
