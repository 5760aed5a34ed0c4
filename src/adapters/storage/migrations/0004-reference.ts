import { type QueryExecutorProvider, sql } from 'kysely';
import type { Engine } from '../engine.ts';

/** Imported composition tables, one row a dataset; the body is a reference file of docs/formats.md. */
export async function up(db: QueryExecutorProvider, engine: Engine): Promise<void> {
  const { integer, strict } = engine.types;
  await sql
    .raw(
      `create table reference_tables (dataset text primary key, source text not null, edition text not null, foods ${integer} not null,
        imported_at text not null, digest text not null, body text not null)${strict}`,
    )
    .execute(db);
}
