import { randomUUID } from 'node:crypto';
import type { Transaction } from 'kysely';
import type { NewFood, NewLabel } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import { isPrinted } from './printedLabel.ts';
import { foodColumns } from './rows.ts';
import type { FoodTable, LabelTable, Tables } from './schema.ts';

/** A food that is not written yet. */
export function newFood(food: NewFood): FoodTable {
  return {
    ...({ maker: null, category: null, gtin: null, density_g_per_ml: null, grams_per_measure: null } as const),
    ...foodColumns(food),
    name: food.name,
    id: randomUUID(),
    is_demo: food.isDemo ? 1 : 0,
    version: 1,
  };
}

/** A label that is not written yet. @throws Fault label-not-readable, label-not-found */
export async function newLabel(
  trx: Transaction<Tables>,
  foodId: string,
  label: NewLabel,
  sequence: number,
  addedAt: string,
): Promise<LabelTable> {
  if (!isPrinted(label.printed)) throw new Fault('label-not-readable', 'The label is not one that could be read again.');
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
