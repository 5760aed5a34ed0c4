import { type QueryExecutorProvider, sql } from 'kysely';
import type { Engine } from '../engine.ts';

/** Estimates by label and version of what made them: computed, so that they may be changed and thrown away. */
export async function up(db: QueryExecutorProvider, engine: Engine): Promise<void> {
  await sql
    .raw(
      `create table mineral_estimates (label_id text primary key references labels (id), version text not null, estimate text not null)${engine.types.strict}`,
    )
    .execute(db);
}
