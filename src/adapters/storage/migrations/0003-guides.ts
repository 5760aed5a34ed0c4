import { type QueryExecutorProvider, sql } from 'kysely';
import type { Engine } from '../engine.ts';

/** Guides as their authors write them, with the labels that stood on the day each was published. */
export async function up(db: QueryExecutorProvider, engine: Engine): Promise<void> {
  const { integer, strict } = engine.types;
  await sql
    .raw(
      `create table guides (id text primary key, guide text not null, published text, version ${integer} not null, is_demo ${integer} not null)${strict}`,
    )
    .execute(db);
}
