import { type ExpressionBuilder, type Kysely, type SelectQueryBuilder, sql, type Transaction } from 'kysely';
import type { LabelRow, StandingLabel, Store } from '#app/store.ts';
import { readPrinted } from './printedLabel.ts';
import { foodRow, labelRow } from './rows.ts';
import type { Tables } from './schema.ts';
import type { Session } from './session.ts';

/**
 * Labels as they were read, with what was said of them since. A damaged one is passed over; when it is the one that stands, its
 * food has none that stands: an earlier label does not take its place.
 */
export function labels(session: Session): Pick<Store, 'labelsOf' | 'standingLabels' | 'standingLabelOf' | 'standingLabelsAfter'> {
  return {
    labelsOf: foodId => labelsOf(session, foodId),
    standingLabels: category => session.read(db => standingLabels(db, db.selectFrom('labels'), category)),
    standingLabelOf: foodId =>
      session.read(async db => (await standingLabels(db, db.selectFrom('labels').where('labels.food_id', '=', foodId)))[0]),
    standingLabelsAfter: (afterId, most) => session.read(db => standingLabelsAfter(db, afterId, most)),
  };
}

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

async function labelsOf(session: Session, foodId: string): Promise<readonly LabelRow[]> {
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
    return rows.flatMap(row => {
      const printed = readPrinted(row.printed);
      const photoIds = photos.filter(photo => photo.label_id === row.id).map(photo => photo.id);
      return printed === undefined ? [] : [labelRow(row, printed, photoIds)];
    });
  });
}

/** Of these labels, the one that stands for each food. */
async function standingLabels(
  db: Kysely<Tables>,
  labels: SelectQueryBuilder<Tables, 'labels', unknown>,
  category?: string,
): Promise<readonly StandingLabel[]> {
  const standing = labels
    .select(['labels.id', 'labels.food_id'])
    .select(
      sql<number>`row_number() over (partition by labels.food_id order by labels.reading_sequence desc, labels.sequence desc)`.as('place'),
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
  const all: StandingLabel[] = [];
  for (const row of rows) {
    const printed = readPrinted(row.printed);
    if (printed === undefined) continue;
    const label = labelRow({ ...row, corrected_by: null, withdrawn_reason: null, withdrawn_at: null }, printed, []);
    all.push({ food: foodRow({ ...row, id: row.food_id }), label });
  }
  return all;
}

async function standingLabelsAfter(db: Kysely<Tables>, afterId: string, most: number) {
  const ids = await db.selectFrom('foods').select('id').where('id', '>', afterId).orderBy('id').limit(most).execute();
  const lastId = ids.at(-1)?.id;
  if (lastId === undefined) return { rows: [] };
  const labels = db.selectFrom('labels').where('labels.food_id', '>', afterId).where('labels.food_id', '<=', lastId);
  return { rows: await standingLabels(db, labels), ...(ids.length < most ? {} : { lastId }) };
}
