import { type QueryExecutorProvider, sql } from 'kysely';
import type { Engine } from '../engine.ts';

/** Handouts on a topic, as their authors write them. Those of clients stand in the clients' own file. */
export async function up(db: QueryExecutorProvider, engine: Engine): Promise<void> {
  const { integer, strict } = engine.types;
  await sql
    .raw(
      `create table handouts (id text primary key, handout text not null, version ${integer} not null, is_demo ${integer} not null)${strict}`,
    )
    .execute(db);
}
