import type { GuideDraft, GuideInput } from '#core/guide/guide.ts';
import { isObject } from '#core/json/presentForm.ts';
import type { ReadLabel } from '#core/label/label.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import type { PublishedGuide, PublishedLabel } from '../documents.ts';
import { judgeShelf, tellable } from '../judgeShelf.ts';
import { plateFood, type Shelf, type ShelfFood } from '../shelf.ts';
import type { Store } from '../store.ts';

export interface GuideFromShelf {
  readonly draft: GuideDraft;
  /** The foods of the guide's category. */
  readonly foods: readonly ShelfFood[];
  readonly plate: Plate;
  readonly yardstick: Yardstick;
  /** What a way in may borrow companions from. */
  readonly plates: readonly Plate[];
  readonly published: PublishedState;
  readonly today: Day;
}

/** What a guide stood on when it was published, seen from today. */
export interface PublishedState {
  /** By food id: the label of that day, where another one stands now. */
  readonly asPublished: ReadonlyMap<string, ReadLabel>;
  /** Foods that have no label any more, with the one of that day. */
  readonly gone: readonly PlateFood[];
}

export const neverPublished: PublishedState = { asPublished: new Map(), gone: [] };

/** A guide out of the workspace: the standing labels of its category, judged, with the days to read them again. */
export function guideFromShelf({ draft, foods, plate, yardstick, plates, published, today }: GuideFromShelf): GuideInput {
  const { setting, switchedOn, servings } = draft.survey;
  const onPlate = servings === undefined ? plate : { ...plate, portion: { servings } };
  const judged = foods.map(({ food }) => food);
  const survey = judgeShelf({
    foods: judged,
    plate: onPlate,
    yardstick,
    switchedOn,
    ...(setting === undefined ? {} : { setting }),
    ways: { shelf: { foods: judged, plates }, keep: tellable },
  });
  const rechecks = foods.flatMap(({ row, label }): [string, Day][] => (label.recheckOn === undefined ? [] : [[row.id, label.recheckOn]]));
  return { draft, survey, today, ...published, recheckOn: new Map(rechecks) };
}

/**
 * Compares what was published with what stands; asks the store only for foods whose label is another one now. A food that was purged
 * from the workspace is not known any more and is left out.
 */
export async function publishedState(
  published: PublishedGuide | undefined,
  draft: GuideDraft,
  standing: readonly ShelfFood[],
  shelf: Shelf,
  store: Store,
): Promise<PublishedState> {
  const byFood = new Map(standing.map(one => [one.row.id, one.label.id]));
  const asPublished = new Map<string, ReadLabel>();
  const gone: PlateFood[] = [];
  for (const { foodId, labelId } of isOfCategory(published, draft) ? (published?.labels ?? []) : []) {
    const now = byFood.get(foodId);
    if (now === labelId) continue;
    const label = (await store.labelsOf(foodId)).find(({ id }) => id === labelId);
    if (label === undefined) continue;
    const reading = shelf.reading(label);
    if (now !== undefined) asPublished.set(foodId, reading);
    else {
      const row = await store.getFood(foodId);
      if (row !== undefined) gone.push(plateFood(row, reading));
    }
  }
  return { asPublished, gone };
}

/** A guide that has been turned to another category has nothing to compare with. */
function isOfCategory(published: PublishedGuide | undefined, draft: GuideDraft): boolean {
  const survey = published?.guide.survey;
  const before = isObject(survey) ? survey.category : undefined;
  return String(before).trim().toLowerCase() === draft.survey.category.trim().toLowerCase();
}

/** What is put on record when a guide is published: every food of its survey with the label that stands. */
export function labelsToPublish(foods: readonly ShelfFood[]): readonly PublishedLabel[] {
  return foods.map(({ row, label }) => ({ foodId: row.id, labelId: label.id }));
}
