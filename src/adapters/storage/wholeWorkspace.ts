import type { Transaction } from 'kysely';
import { z } from 'zod';
import type { WorkspaceFile } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import { referenceFileFromJson } from '#core/reference/referenceFile.ts';
import { digestOf } from './references.ts';
import type { Tables } from './schema.ts';
import { batches, type Session } from './session.ts';

/** In the order in which rows can be put back: what is referred to comes first. */
const tables = [
  'foods',
  'labels',
  'label_withdrawals',
  'label_rechecks',
  'photos',
  'plates',
  'yardsticks',
  'saved_surveys',
  'guides',
  'handouts',
  'imports',
  'import_labels',
  'reference_tables',
] as const;
type TableName = (typeof tables)[number];

/** What the rows of each table are put in order by: the same workspace gives the same file. */
const order: Readonly<Record<TableName, string>> = {
  foods: 'id',
  labels: 'sequence',
  label_withdrawals: 'label_id',
  label_rechecks: 'label_id',
  photos: 'id',
  plates: 'id',
  yardsticks: 'id',
  saved_surveys: 'id',
  guides: 'id',
  handouts: 'id',
  imports: 'id',
  import_labels: 'label_id',
  reference_tables: 'dataset',
};

const text = z.string();
const maybeText = z.string().nullable();
const count = z.number().int();
const rowShapes = {
  foods: z.strictObject({
    id: text,
    name: text,
    maker: maybeText,
    category: maybeText,
    gtin: maybeText,
    density_g_per_ml: z.number().nullable(),
    grams_per_measure: maybeText,
    is_demo: count,
    version: count,
  }),
  labels: z.strictObject({
    id: text,
    food_id: text,
    kind: z.enum(['read', 'correction']),
    printed: text,
    corrects_label_id: maybeText,
    reason: maybeText,
    added_at: text,
    sequence: count,
    reading_sequence: count,
  }),
  label_withdrawals: z.strictObject({ label_id: text, reason: text, withdrawn_at: text }),
  label_rechecks: z.strictObject({ label_id: text, due_on: text }),
  photos: z.strictObject({ id: text, label_id: text, mime: text, sha256: text, bytes: z.base64() }),
  plates: z.strictObject({ id: text, plate: text, version: count, is_demo: count }),
  yardsticks: z.strictObject({ id: text, yardstick: text, version: count }),
  saved_surveys: z.strictObject({ id: text, survey: text }),
  guides: z.strictObject({ id: text, guide: text, published: maybeText, version: count, is_demo: count }),
  handouts: z.strictObject({ id: text, handout: text, version: count, is_demo: count }),
  imports: z.strictObject({ id: text, file_name: text, imported_at: text, added: count, joined: count, undone_at: maybeText }),
  import_labels: z.strictObject({ import_id: text, label_id: text }),
  reference_tables: z.strictObject({
    dataset: text,
    source: text,
    edition: text,
    foods: count,
    imported_at: text,
    digest: text,
    body: text.refine(isReferenceFile, 'not a reference file'),
  }),
} satisfies Record<TableName, z.ZodType>;
/** Tables that files of an earlier program do not have yet. */
const laterTables: ReadonlySet<TableName> = new Set(['guides', 'handouts', 'reference_tables']);

function rowsOf(name: TableName): z.ZodType {
  const rows = z.array(rowShapes[name] as z.ZodType);
  return laterTables.has(name) ? rows.default([]) : rows;
}

const fileShape = z.object({
  platewrightWorkspace: z.literal(1),
  tables: z.strictObject(Object.fromEntries(tables.map(name => [name, rowsOf(name)]))),
});

function isReferenceFile(body: string): boolean {
  try {
    return referenceFileFromJson(body, 'body').length === 1;
  } catch {
    return false;
  }
}

export async function exportAll(session: Session): Promise<WorkspaceFile> {
  return session.read(db =>
    // One transaction, so that the tables belong to the same moment.
    db.transaction().execute(async trx => {
      const file: Record<string, readonly Readonly<Record<string, unknown>>[]> = {};
      for (const name of tables) {
        const rows = (await trx
          .selectFrom(name)
          .selectAll()
          .orderBy(order[name] as never)
          .execute()) as Record<string, unknown>[];
        file[name] =
          name === 'photos'
            ? rows.map(row => ({ ...row, bytes: Buffer.from(row.bytes as Uint8Array).toString('base64') }))
            : rows.map(row => ({ ...row }));
      }
      return { platewrightWorkspace: 1, tables: file };
    }),
  );
}

export async function restore(session: Session, file: WorkspaceFile): Promise<void> {
  const read = fileShape.safeParse(file);
  if (!read.success) {
    const [problem] = read.error.issues;
    throw new Fault('workspace-file-not-valid', `At ${problem?.path.join('.') || 'the top'}: ${problem?.message ?? 'not readable'}.`);
  }
  await session.write(async trx => {
    for (const name of tables) {
      if ((await trx.selectFrom(name).selectAll().limit(1).executeTakeFirst()) !== undefined) {
        throw new Fault('workspace-not-empty', 'A workspace file can only be restored into an empty workspace.');
      }
    }
    const given = read.data.tables as unknown as Record<TableName, Record<string, unknown>[]>;
    for (const name of tables) {
      const rows =
        name === 'photos'
          ? given[name].map(row => ({ ...row, bytes: Buffer.from(row.bytes as string, 'base64') }))
          : name === 'reference_tables'
            ? given[name].map(row => ({ ...row, digest: digestOf(row.body as string) }))
            : given[name];
      for (const some of batches(rows))
        await trx
          .insertInto(name)
          .values(some as never)
          .execute();
    }
    const last = given.labels.reduce((most, row) => Math.max(most, row.sequence as number), 0);
    await trx.updateTable('workspace').set({ label_sequence: last }).execute();
  });
}

export async function purgeDemo(session: Session): Promise<void> {
  await session.write(trx =>
    purging(trx, async () => {
      const demoLabels = trx
        .selectFrom('labels')
        .innerJoin('foods', 'foods.id', 'labels.food_id')
        .select('labels.id')
        .where('foods.is_demo', '=', 1);
      for (const name of ['label_withdrawals', 'label_rechecks', 'photos', 'import_labels', 'mineral_estimates'] as const)
        await trx.deleteFrom(name).where('label_id', 'in', demoLabels).execute();
      // A correction refers to the label it corrects: corrections go first.
      await trx.deleteFrom('labels').where('id', 'in', demoLabels).where('corrects_label_id', 'is not', null).execute();
      await trx.deleteFrom('labels').where('id', 'in', demoLabels).execute();
      await trx.deleteFrom('foods').where('is_demo', '=', 1).execute();
      await trx.deleteFrom('plates').where('is_demo', '=', 1).execute();
      await trx.deleteFrom('guides').where('is_demo', '=', 1).execute();
      await trx.deleteFrom('handouts').where('is_demo', '=', 1).execute();
      await trx
        .deleteFrom('imports')
        .where(({ not, exists, selectFrom }) =>
          not(exists(selectFrom('import_labels').select('label_id').whereRef('import_labels.import_id', '=', 'imports.id'))),
        )
        .execute();
    }),
  );
}

export async function purgeAll(session: Session): Promise<void> {
  await session.write(trx =>
    purging(trx, async () => {
      // Computed, and so in no workspace file.
      await trx.deleteFrom('mineral_estimates').execute();
      for (const name of [...tables].reverse()) {
        if (name === 'labels') await trx.deleteFrom('labels').where('corrects_label_id', 'is not', null).execute();
        await trx.deleteFrom(name).execute();
      }
    }),
  );
}

/** The triggers let rows go while this runs; when the transaction fails, the sign is rolled back with it. */
async function purging(trx: Transaction<Tables>, work: () => Promise<void>): Promise<void> {
  await trx.updateTable('workspace').set({ is_purging: 1 }).execute();
  await work();
  await trx.updateTable('workspace').set({ is_purging: 0 }).execute();
}
