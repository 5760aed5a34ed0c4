import type { LabelRow, Store } from './store.ts';

/** A food of the workspace with its labels that count: neither withdrawn nor corrected, newest first. */
export interface FoodLabels {
  readonly foodId: string;
  readonly labels: readonly LabelRow[];
}

export async function labelsOfCategory(category: string, store: Store): Promise<readonly FoodLabels[]> {
  const all: FoodLabels[] = [];
  for (const { id } of await store.listFoods({ category })) {
    const labels = await store.labelsOf(id);
    all.push({ foodId: id, labels: labels.filter(({ withdrawn, correctedBy }) => withdrawn === undefined && correctedBy === undefined) });
  }
  return all;
}

/**
 * Files name foods by the ids of their labels, the workspace by ids of its own: gives the workspace's id of a file's, or the id as it
 * is where no label has it.
 */
export function ownFoodId(foods: readonly FoodLabels[]): (fileId: string) => string {
  const ids = new Map(
    foods.flatMap(({ foodId, labels }) =>
      labels.flatMap(({ printed: { id } }): [string, string][] => (id === undefined ? [] : [[id, foodId]])),
    ),
  );
  return fileId => ids.get(fileId) ?? fileId;
}
