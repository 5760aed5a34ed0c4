import { isObject, type JsonObject } from '#core/json/presentForm.ts';
import type { GuideFile, PublishedGuide, PublishedLabel } from '../documents.ts';
import { labelsOfCategory, ownFoodId } from '../labelsOfCategory.ts';
import type { Store } from '../store.ts';

/**
 * A guide file names foods by the ids of their labels, the workspace by ids of its own: gives the guide in the workspace's ids, with the
 * labels that stood on its day of publication. What it says of foods that the workspace does not have stays, and is reported when it is built.
 */
export async function guideForStore(
  guide: GuideFile,
  store: Store,
): Promise<{ readonly guide: GuideFile; readonly published: PublishedGuide }> {
  const category = isObject(guide.survey) ? guide.survey.category : undefined;
  const foods = await labelsOfCategory(String(category ?? ''), store);
  const own = ownFoodId(foods);
  const stood = foods.flatMap(({ foodId, labels }): PublishedLabel[] => {
    const ofThatDay = labels.find(({ printed }) => (printed.readOn ?? '') <= String(guide.publishedOn ?? ''));
    return ofThatDay === undefined ? [] : [{ foodId, labelId: ofThatDay.id }];
  });
  const keyed = (record: unknown): JsonObject =>
    Object.fromEntries(Object.entries(isObject(record) ? record : {}).map(([id, value]) => [own(id), value]));
  const listed = (list: unknown): readonly JsonObject[] => (Array.isArray(list) ? list.filter(isObject) : []);
  const ofStore: GuideFile = {
    ...guide,
    portionNotes: keyed(guide.portionNotes),
    whereToBuy: keyed(guide.whereToBuy),
    photos: keyed(guide.photos),
    leftOut: listed(guide.leftOut).map(one => ({ ...one, foodId: own(String(one.foodId)) })),
    disclosures: listed(guide.disclosures).map(one =>
      Array.isArray(one.foods) ? { ...one, foods: one.foods.map(id => own(String(id))) } : one,
    ),
  };
  return { guide: ofStore, published: { guide: ofStore, labels: stood } };
}
