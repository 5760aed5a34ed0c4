import { type QueryExecutorProvider, sql } from 'kysely';
import type { AnyRow } from './tableEntry.ts';

/** The same for every table, whatever its columns: SQL for those who go through the registry. Names come from there, never from outside. */

export async function rowsInOrder(db: QueryExecutorProvider, table: string, order: string): Promise<readonly AnyRow[]> {
  return (await sql<AnyRow>`select * from ${sql.table(table)} order by ${sql.ref(order)}`.execute(db)).rows;
}

export async function insertRows(db: QueryExecutorProvider, table: string, rows: readonly AnyRow[]): Promise<void> {
  const columns = Object.keys(rows[0] ?? {});
  if (columns.length === 0) return;
  // One text with a place for each value: a fragment a row costs a quarter more time.
  const row = ['(', ...columns.slice(1).map(() => ', ')];
  const texts = [...rows.flatMap((_, at) => (at === 0 ? row : [`), ${row[0]}`, ...row.slice(1)])), ')'];
  const values = sql(Object.assign(texts, { raw: texts }), ...rows.flatMap(given => columns.map(column => given[column])));
  await sql`insert into ${sql.table(table)} (${sql.join(columns.map(column => sql.ref(column)))}) values ${values}`.execute(db);
}

/** `condition` is SQL of the registry. */
export async function deleteRows(db: QueryExecutorProvider, table: string, condition = '1 = 1'): Promise<void> {
  await sql`delete from ${sql.table(table)} where ${sql.raw(condition)}`.execute(db);
}

export async function hasRows(db: QueryExecutorProvider, table: string): Promise<boolean> {
  return (await sql`select 1 from ${sql.table(table)} limit 1`.execute(db)).rows.length > 0;
}
