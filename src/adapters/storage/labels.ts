import { randomUUID } from 'node:crypto';
import { type ExpressionBuilder, type Kysely, sql, type Transaction } from 'kysely';
import type { FoodRow, ImportEntry, LabelRow, NewFood, NewLabel } from '#app/store.ts';
import { rowsAStep, unwatched, type Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';
import { foodColumns, foodRow, labelRow } from './rows.ts';
import type { LabelTable, Tables } from './schema.ts';
import { batches, claimFood, type Session } from './session.ts';

/** Labels of all foods with what is said of them: by what they are corrected, whether withdrawn, when due again. */
function labelsWithFacts(db: Kysely<Tables> | Transaction<Tables>) {
  return db
    .selectFrom('labels')
    .leftJoin('label_withdrawals', 'label_withdrawals.label_id', 'labels.id')
    .leftJoin('label_rechecks', 'label_rechecks.label_id', 'labels.id')
    .selectAll('labels')
    .select(['label_withdrawals.reason as withdrawn_reason', 'label_withdrawals.withdrawn_at', 'label_rechecks.due_on'])
    .select(eb => standingCorrection(eb).select('correction.id').orderBy('correction.sequence', 'desc').limit(1).as('corrected_by'));
}

/** A correction holds until it is withdrawn itself. */
function standingCorrection(eb: ExpressionBuilder<Tables, 'labels'>) {
  return eb
    .selectFrom('labels as correction')
    .whereRef('correction.corrects_label_id', '=', 'labels.id')
    .where(({ not, exists, selectFrom }) =>
      not(exists(selectFrom('label_withdrawals as gone').select('gone.label_id').whereRef('gone.label_id', '=', 'correction.id'))),
    );
}

export async function labelsOf(session: Session, foodId: string): Promise<readonly LabelRow[]> {
  return session.read(async db => {
    const rows = await labelsWithFacts(db)
      .where('labels.food_id', '=', foodId)
      .orderBy('reading_sequence', 'desc')
      .orderBy('sequence', 'desc')
      .execute();
    const photos = await db
      .selectFrom('photos')
      .innerJoin('labels', 'labels.id', 'photos.label_id')
      .select(['photos.id', 'photos.label_id'])
      .where('labels.food_id', '=', foodId)
      .orderBy('photos.id')
      .execute();
    return rows.map(row =>
      labelRow(
        row,
        photos.filter(photo => photo.label_id === row.id).map(photo => photo.id),
      ),
    );
  });
}

export async function standingLabels(
  session: Session,
  category?: string,
): Promise<readonly { readonly food: FoodRow; readonly label: LabelRow }[]> {
  return session.read(async db => {
    const standing = db
      .selectFrom('labels')
      .select(['labels.id', 'labels.food_id'])
      .select(
        sql<number>`row_number() over (partition by labels.food_id order by labels.reading_sequence desc, labels.sequence desc)`.as(
          'place',
        ),
      )
      .where(({ not, exists, selectFrom }) =>
        not(exists(selectFrom('label_withdrawals').select('label_id').whereRef('label_id', '=', 'labels.id'))),
      )
      .where(eb => eb.not(eb.exists(standingCorrection(eb).select('correction.id'))))
      .as('standing');
    let query = db
      .selectFrom(standing)
      .innerJoin('labels', 'labels.id', 'standing.id')
      .innerJoin('foods', 'foods.id', 'labels.food_id')
      .leftJoin('label_rechecks', 'label_rechecks.label_id', 'labels.id')
      .selectAll('labels')
      .select([
        'label_rechecks.due_on',
        'foods.name',
        'foods.maker',
        'foods.category',
        'foods.gtin',
        'foods.density_g_per_ml',
        'foods.grams_per_measure',
        'foods.is_demo',
        'foods.version',
      ])
      .where('standing.place', '=', 1)
      .orderBy(sql`lower(coalesce(foods.maker, ''))`)
      .orderBy(sql`lower(foods.name)`)
      .orderBy('foods.id');
    if (category !== undefined) query = query.where(sql<string>`lower(foods.category)`, '=', category.toLowerCase());
    const rows = await query.execute();
    return rows.map(row => ({
      food: foodRow({ ...row, id: row.food_id }),
      label: labelRow({ ...row, corrected_by: null, withdrawn_reason: null, withdrawn_at: null }, []),
    }));
  });
}

/** A food and its first label, as rows that are not written yet. */
function newFood(food: NewFood) {
  return {
    ...({ maker: null, category: null, gtin: null, density_g_per_ml: null, grams_per_measure: null } as const),
    ...foodColumns(food),
    name: food.name,
    id: randomUUID(),
    is_demo: food.isDemo ? 1 : 0,
    version: 1,
  };
}

async function newLabelRow(
  trx: Transaction<Tables>,
  foodId: string,
  label: NewLabel,
  sequence: number,
  addedAt: string,
): Promise<LabelTable> {
  let readingSequence = sequence;
  if (label.kind === 'correction') {
    const corrected = await trx
      .selectFrom('labels')
      .select(['reading_sequence', 'food_id'])
      .where('id', '=', label.correctsLabelId ?? '')
      .executeTakeFirst();
    if (corrected === undefined || corrected.food_id !== foodId)
      throw new Fault('label-not-found', 'The label to be corrected is not one of this food.');
    readingSequence = corrected.reading_sequence;
  }
  return {
    id: randomUUID(),
    food_id: foodId,
    kind: label.kind,
    printed: JSON.stringify(label.printed),
    corrects_label_id: label.kind === 'correction' ? (label.correctsLabelId ?? null) : null,
    reason: label.reason ?? null,
    added_at: addedAt,
    sequence,
    reading_sequence: readingSequence,
  };
}

async function insertLabel(session: Session, trx: Transaction<Tables>, foodId: string, label: NewLabel): Promise<LabelRow> {
  const row = await newLabelRow(trx, foodId, label, await session.takeSequence(trx, 1), session.timestamp());
  await trx.insertInto('labels').values(row).execute();
  if (label.recheckOn !== undefined) await trx.insertInto('label_rechecks').values({ label_id: row.id, due_on: label.recheckOn }).execute();
  return labelRow({ ...row, corrected_by: null, withdrawn_reason: null, withdrawn_at: null, due_on: label.recheckOn ?? null }, []);
}

export async function addFood(session: Session, food: NewFood, label: NewLabel) {
  return session.write(async trx => {
    const row = newFood(food);
    await trx.insertInto('foods').values(row).execute();
    return { food: foodRow(row), label: await insertLabel(session, trx, row.id, label) };
  });
}

export async function addLabel(session: Session, foodId: string, seenVersion: number, label: NewLabel) {
  return session.write(async trx => {
    await claimFood(trx, foodId, seenVersion);
    const added = await insertLabel(session, trx, foodId, label);
    const food = await trx.selectFrom('foods').selectAll().where('id', '=', foodId).executeTakeFirstOrThrow();
    return { food: foodRow(food), label: added };
  });
}

export async function withdrawLabel(session: Session, labelId: string, seenVersion: number, reason: string): Promise<FoodRow> {
  return session.write(async trx => {
    const label = await trx.selectFrom('labels').select('food_id').where('id', '=', labelId).executeTakeFirst();
    if (label === undefined) throw new Fault('label-not-found', 'The label is not in the workspace.');
    await claimFood(trx, label.food_id, seenVersion);
    await trx
      .insertInto('label_withdrawals')
      .values({ label_id: labelId, reason, withdrawn_at: session.timestamp() })
      .onConflict(conflict => conflict.doNothing())
      .execute();
    return foodRow(await trx.selectFrom('foods').selectAll().where('id', '=', label.food_id).executeTakeFirstOrThrow());
  });
}

export async function setRecheck(session: Session, labelId: string, dueOn: string | null): Promise<void> {
  await session.write(async trx => {
    const label = await trx.selectFrom('labels').select('id').where('id', '=', labelId).executeTakeFirst();
    if (label === undefined) throw new Fault('label-not-found', 'The label is not in the workspace.');
    await trx.deleteFrom('label_rechecks').where('label_id', '=', labelId).execute();
    if (dueOn !== null) await trx.insertInto('label_rechecks').values({ label_id: labelId, due_on: dueOn }).execute();
  });
}

/** All of an import or nothing of it. A label that joins a food raises that food's version, so that an open form notices. */
export async function applyImport(session: Session, entry: ImportEntry, watch: Watch = unwatched) {
  return session.write(async trx => {
    const at = session.timestamp();
    const first = await session.takeSequence(trx, entry.labels.length);
    const foods: ReturnType<typeof newFood>[] = [];
    const labels: LabelTable[] = [];
    const rechecks: { label_id: string; due_on: string }[] = [];
    const joined: string[] = [];
    for (const [index, one] of entry.labels.entries()) {
      if (index % rowsAStep === 0) await watch.step('Keeping labels', index, entry.labels.length);
      let foodId: string;
      if ('begins' in one) {
        const food = newFood({ ...one.begins, ...(entry.isDemo === undefined ? {} : { isDemo: entry.isDemo }) });
        foods.push(food);
        foodId = food.id;
      } else {
        foodId = one.joins;
        joined.push(foodId);
      }
      const label = await newLabelRow(trx, foodId, one.label, first + index, at);
      labels.push(label);
      if (one.label.recheckOn !== undefined) rechecks.push({ label_id: label.id, due_on: one.label.recheckOn });
    }
    for (const rows of batches(foods)) await trx.insertInto('foods').values(rows).execute();
    for (const rows of batches(joined)) {
      const { numUpdatedRows } = await trx
        .updateTable('foods')
        .set(eb => ({ version: eb('version', '+', 1) }))
        .where('id', 'in', rows)
        .executeTakeFirst();
      if (Number(numUpdatedRows) !== new Set(rows).size)
        throw new Fault('food-not-found', 'A food that a row was to join is no longer in the workspace.');
    }
    for (const rows of batches(labels)) {
      await watch.step('Keeping labels', labels.length, labels.length);
      await trx.insertInto('labels').values(rows).execute();
    }
    for (const rows of batches(rechecks)) await trx.insertInto('label_rechecks').values(rows).execute();
    const importId = randomUUID();
    const counts = { added: foods.length, joined: joined.length };
    await trx
      .insertInto('imports')
      .values({ id: importId, file_name: entry.fileName, imported_at: at, ...counts, undone_at: null })
      .execute();
    for (const rows of batches(labels))
      await trx
        .insertInto('import_labels')
        .values(rows.map(({ id }) => ({ import_id: importId, label_id: id })))
        .execute();
    return { importId, ...counts };
  });
}

export async function undoImport(session: Session, importId: string): Promise<{ readonly withdrawn: number }> {
  return session.write(async trx => {
    const entry = await trx.selectFrom('imports').select('undone_at').where('id', '=', importId).executeTakeFirst();
    if (entry === undefined) throw new Fault('not-found', 'The import is not in the workspace.');
    const at = session.timestamp();
    const open = await trx
      .selectFrom('import_labels')
      .innerJoin('labels', 'labels.id', 'import_labels.label_id')
      .select(['import_labels.label_id', 'labels.food_id'])
      .where('import_id', '=', importId)
      .where(({ not, exists, selectFrom }) =>
        not(
          exists(selectFrom('label_withdrawals').select('label_id').whereRef('label_withdrawals.label_id', '=', 'import_labels.label_id')),
        ),
      )
      .execute();
    for (const rows of batches(open)) {
      await trx
        .insertInto('label_withdrawals')
        .values(rows.map(({ label_id }) => ({ label_id, reason: 'the import was undone', withdrawn_at: at })))
        .execute();
      await trx
        .updateTable('foods')
        .set(eb => ({ version: eb('version', '+', 1) }))
        .where(
          'id',
          'in',
          rows.map(({ food_id }) => food_id),
        )
        .execute();
    }
    await trx.updateTable('imports').set({ undone_at: at }).where('id', '=', importId).where('undone_at', 'is', null).execute();
    return { withdrawn: open.length };
  });
}
