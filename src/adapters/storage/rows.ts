import type { Selectable } from 'kysely';
import type { FoodRow, LabelRow, NewFood } from '#app/store.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import { readMeasures } from './keptTexts.ts';
import type { FoodTable, LabelTable } from './schema.ts';

/** From columns to the values of the port, and back. Absent stays absent: null in SQL, no key in TypeScript. */

/** Damaged measures are as good as none given: what would have been weighed by them is unknown. */
export function foodRow(row: Selectable<FoodTable>): FoodRow {
  const gramsPerMeasure = row.grams_per_measure === null ? undefined : readMeasures(row.grams_per_measure);
  return {
    id: row.id,
    name: row.name,
    ...(row.maker === null ? {} : { maker: row.maker }),
    ...(row.category === null ? {} : { category: row.category }),
    ...(row.gtin === null ? {} : { gtin: row.gtin }),
    ...(row.density_g_per_ml === null ? {} : { densityGPerMl: row.density_g_per_ml }),
    ...(gramsPerMeasure === undefined ? {} : { gramsPerMeasure }),
    isDemo: row.is_demo === 1,
    version: row.version,
  };
}

export function foodColumns(food: Partial<NewFood>): Partial<FoodTable> {
  return {
    ...('name' in food && food.name !== undefined ? { name: food.name } : {}),
    ...('maker' in food ? { maker: food.maker ?? null } : {}),
    ...('category' in food ? { category: food.category ?? null } : {}),
    ...('gtin' in food ? { gtin: food.gtin ?? null } : {}),
    ...('densityGPerMl' in food ? { density_g_per_ml: food.densityGPerMl ?? null } : {}),
    ...('gramsPerMeasure' in food
      ? { grams_per_measure: food.gramsPerMeasure === undefined ? null : JSON.stringify(food.gramsPerMeasure) }
      : {}),
  };
}

/** What other tables say of a label. */
export interface LabelFacts {
  readonly corrected_by: string | null;
  readonly withdrawn_reason: string | null;
  readonly withdrawn_at: string | null;
  readonly due_on: string | null;
}

export function labelRow(row: Selectable<LabelTable> & LabelFacts, printed: PrintedLabel, photoIds: readonly string[]): LabelRow {
  return {
    id: row.id,
    foodId: row.food_id,
    kind: row.kind,
    printed,
    addedAt: row.added_at,
    ...(row.corrects_label_id === null ? {} : { correctsLabelId: row.corrects_label_id }),
    ...(row.reason === null ? {} : { reason: row.reason }),
    ...(row.due_on === null ? {} : { recheckOn: row.due_on }),
    ...(row.corrected_by === null ? {} : { correctedBy: row.corrected_by }),
    ...(row.withdrawn_at === null ? {} : { withdrawn: { reason: row.withdrawn_reason ?? '', at: row.withdrawn_at } }),
    photoIds,
  };
}
