import { labelsOfCategory, ownFoodId } from '../labelsOfCategory.ts';
import type { HandoutFile, Store } from '../store.ts';

type Json = Readonly<Record<string, unknown>>;

/** A handout file in the workspace's ids: where a food stands, and which are left out. */
export async function handoutForStore(handout: HandoutFile, store: Store): Promise<HandoutFile> {
  const categories = [];
  for (const one of (handout.categories ?? []) as readonly Json[]) {
    const own = ownFoodId(await labelsOfCategory(String(one.category ?? ''), store));
    const foodAisles = Object.entries((one.foodAisles ?? {}) as Json).map(([id, aisle]) => [own(id), aisle]);
    const leftOut = ((one.leftOut ?? []) as readonly unknown[]).map(id => own(String(id)));
    categories.push({ ...one, foodAisles: Object.fromEntries(foodAisles), leftOut });
  }
  return { ...handout, categories };
}
