import { isObject } from '#core/json/presentForm.ts';
import type { HandoutFile } from '../documents.ts';
import { labelsOfCategory, ownFoodId } from '../labelsOfCategory.ts';
import type { Store } from '../store.ts';

/** A handout file in the workspace's ids: where a food stands, and which are left out. What is no list or record stays, and is reported when it is built. */
export async function handoutForStore(handout: HandoutFile, store: Store): Promise<HandoutFile> {
  if (!Array.isArray(handout.categories)) return handout;
  const categories = [];
  for (const one of handout.categories) {
    if (!isObject(one)) categories.push(one);
    else {
      const own = ownFoodId(await labelsOfCategory(String(one.category ?? ''), store));
      const aisles = Object.entries(isObject(one.foodAisles) ? one.foodAisles : {}).map(([id, aisle]) => [own(id), aisle]);
      const leftOut = (Array.isArray(one.leftOut) ? one.leftOut : []).map(id => own(String(id)));
      categories.push({ ...one, foodAisles: Object.fromEntries(aisles), leftOut });
    }
  }
  return { ...handout, categories };
}
