import type { GuideFile, PublishedLabel, Store } from '../store.ts';

type Json = Readonly<Record<string, unknown>>;

/**
 * A guide file names foods by the ids of their labels, the workspace by ids of its own: gives the guide in the workspace's ids, with the
 * labels that stood on its day of publication. What it says of foods that the workspace does not have stays, and is reported when it is built.
 */
export async function guideForStore(
  guide: GuideFile,
  store: Store,
): Promise<{ readonly guide: GuideFile; readonly published: readonly PublishedLabel[] }> {
  const survey = guide.survey as Json | undefined;
  const foods = await store.listFoods({ category: String(survey?.category ?? '') });
  const ids = new Map<string, string>();
  const published: PublishedLabel[] = [];
  for (const { id } of foods) {
    const labels = (await store.labelsOf(id)).filter(({ withdrawn, correctedBy }) => withdrawn === undefined && correctedBy === undefined);
    for (const { printed } of labels) if (printed.id !== undefined) ids.set(printed.id, id);
    const ofThatDay = labels.find(({ printed }) => (printed.readOn ?? '') <= String(guide.publishedOn ?? ''));
    if (ofThatDay !== undefined) published.push({ foodId: id, labelId: ofThatDay.id });
  }
  const own = (id: string): string => ids.get(id) ?? id;
  const keyed = (record: unknown): Json =>
    Object.fromEntries(Object.entries((record ?? {}) as Json).map(([id, value]) => [own(id), value]));
  const listed = (list: unknown): readonly Json[] => (list ?? []) as readonly Json[];
  return {
    guide: {
      ...guide,
      portionNotes: keyed(guide.portionNotes),
      whereToBuy: keyed(guide.whereToBuy),
      photos: keyed(guide.photos),
      leftOut: listed(guide.leftOut).map(one => ({ ...one, foodId: own(String(one.foodId)) })),
      disclosures: listed(guide.disclosures).map(one =>
        Array.isArray(one.foods) ? { ...one, foods: one.foods.map(id => own(String(id))) } : one,
      ),
    },
    published,
  };
}
