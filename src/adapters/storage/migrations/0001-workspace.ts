import { type QueryExecutorProvider, sql } from 'kysely';
import type { Engine } from '../engine.ts';

/**
 * The first tables. Labels, withdrawals and photos say what a package said: triggers refuse to change them at all, and
 * to delete them unless the workspace is being purged.
 */
export async function up(db: QueryExecutorProvider, engine: Engine): Promise<void> {
  const { bytes, double, integer, strict } = engine.types;
  for (const statement of [
    `create table foods (id text primary key, name text not null, maker text, category text, gtin text, density_g_per_ml ${double},
      grams_per_measure text, is_demo ${integer} not null, version ${integer} not null)${strict}`,
    `create index foods_category on foods (category)`,
    `create index foods_gtin on foods (gtin)`,
    `create table labels (id text primary key, food_id text not null references foods (id), kind text not null check (kind in ('read', 'correction')),
      printed text not null, corrects_label_id text references labels (id), reason text, added_at text not null,
      sequence ${integer} not null unique, reading_sequence ${integer} not null,
      check ((kind = 'correction') = (corrects_label_id is not null)))${strict}`,
    `create index labels_food on labels (food_id, reading_sequence)`,
    `create index labels_corrects on labels (corrects_label_id)`,
    `create table label_withdrawals (label_id text primary key references labels (id), reason text not null, withdrawn_at text not null)${strict}`,
    `create table label_rechecks (label_id text primary key references labels (id), due_on text not null)${strict}`,
    `create table photos (id text primary key, label_id text not null references labels (id), mime text not null, sha256 text not null, bytes ${bytes} not null)${strict}`,
    `create index photos_label on photos (label_id)`,
    `create table plates (id text primary key, plate text not null, version ${integer} not null, is_demo ${integer} not null)${strict}`,
    `create table yardsticks (id text primary key, yardstick text not null, version ${integer} not null)${strict}`,
    `create table saved_surveys (id text primary key, survey text not null)${strict}`,
    `create table imports (id text primary key, file_name text not null, imported_at text not null, added ${integer} not null, joined ${integer} not null, undone_at text)${strict}`,
    `create table import_labels (import_id text not null references imports (id), label_id text primary key references labels (id))${strict}`,
    ...['labels', 'label_withdrawals', 'photos'].flatMap(table => engine.neverChanged(table)),
  ]) {
    await sql.raw(statement).execute(db);
  }
}
