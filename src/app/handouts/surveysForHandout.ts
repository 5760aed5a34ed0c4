import { type ForClient, judgeForClient } from '#app/clients/judgeForClient.ts';
import type { AimStates } from '#core/client/aims/aimStates.ts';
import { clientAims } from '#core/client/aims/clientAims.ts';
import { evenPattern } from '#core/client/record/record.ts';
import { Fault } from '#core/errors.ts';
import type { HandoutCategory, HandoutDraft, HandoutFood, HandoutInput, HandoutSurvey } from '#core/handout/handout.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { unsafeFood } from '#core/yardstick/foodSafety.ts';
import type { WaysIn } from '#core/yardstick/wayIn.ts';
import { prepareWaysIn } from '#core/yardstick/waysIn.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { isOff, judgeShelf } from '../judgeShelf.ts';

/** The foods of one category of a draft, and the plate they are eaten on. */
export interface CategoryMaterial {
  readonly category: HandoutCategory;
  readonly foods: readonly PlateFood[];
  readonly plate: Plate;
}

export interface HandoutMaterial {
  readonly draft: HandoutDraft;
  readonly categories: readonly CategoryMaterial[];
  /** What a handout on a topic is judged by; a client's is made from the prescription. */
  readonly topicYardstick?: Yardstick;
  /** Estimated minerals may be used, at their safe end. */
  readonly useEstimates?: boolean;
  /** What the client's record shows beside the prescription. */
  readonly states?: AimStates;
}

/**
 * What a handout is built from: each category judged on its plate, by the meal's share of the signed prescription or by the topic's
 * yardstick, with ways in for what is over or nearly.
 *
 * @throws Fault handout-not-valid when there is neither a prescription nor a yardstick, or a category names a meal that is none.
 */
export function surveysForHandout({ draft, categories, topicYardstick, useEstimates = false, states }: HandoutMaterial): HandoutInput {
  const { prescription, avoidedFoods } = draft;
  const pattern = draft.meals.length > 0 ? draft.meals : evenPattern;
  const plates = categories.map(({ plate }) => plate);
  const isSuppressed = draft.setting === 'transplant' || draft.immuneSuppressed === true;
  const surveys = categories.map(({ category, foods, plate }): HandoutSurvey => {
    if (prescription === undefined) {
      if (topicYardstick === undefined)
        throw new Fault('handout-not-valid', `The handout "${draft.id}" has no prescription and no yardstick.`);
      const switchedOn = draft.topic?.switchedOn ?? [];
      const topic = { yardstick: topicYardstick, switchedOn, setting: draft.setting };
      return judgedByTopic({ category, foods, plate, plates, ...topic }, isSuppressed);
    }
    const share = category.meal === undefined ? pattern[0]! : pattern.find(({ name }) => name === category.meal);
    if (share === undefined) throw new Fault('handout-not-valid', `"${category.meal}" is no meal of the handout "${draft.id}".`);
    const forClient = { targets: prescription.targets, avoidedFoods, allergies: avoidedFoods, useEstimates, isSuppressed };
    return judgedForClient({ category, foods, plate }, { ...forClient, meal: share, plate }, plates);
  });
  if (prescription === undefined) return { draft, surveys };
  const aims = clientAims({ targets: prescription.targets, isSuppressed, ...(states === undefined ? {} : { states }) });
  return { draft: { ...draft, aims }, surveys };
}

/** By the client's own judge. A food that is never safe for the client is in no list at all, not even as what to swap. */
function judgedForClient({ category, foods, plate }: CategoryMaterial, client: ForClient, plates: readonly Plate[]): HandoutSurvey {
  const categorized = foods.map(food => ({ food, category: category.category }));
  const { yardstick, dayYardstick, foods: all } = judgeForClient(categorized, client);
  const judged = all.filter(({ unsafe }) => unsafe?.rule !== 'never');
  const shelf = { foods: judged.map(({ food }) => food), plates };
  const waysBy = new Map<string, ReturnType<typeof prepareWaysIn>>();
  const handoutFoods = judged.map(({ food, verdict, offer, notTold, unsafe, yardstick: byTold }): HandoutFood => {
    const key = notTold.join();
    const waysIn = waysBy.get(key) ?? prepareWaysIn({ plate, yardstick: byTold, shelf });
    waysBy.set(key, waysIn);
    const isOffered = offer !== 'never' && offer !== 'ask';
    return {
      food,
      verdict,
      ways: isOff(verdict) && isOffered ? waysIn(food, verdict).ways : [],
      ...(notTold.length === 0 ? {} : { notTold }),
      ...(unsafe === undefined ? {} : { unsafe }),
    };
  });
  return { category, plate, yardstick, switchedOn: [], useEstimates: client.useEstimates, dayYardstick, foods: handoutFoods };
}

interface Judging extends CategoryMaterial {
  readonly plates: readonly Plate[];
  readonly yardstick: Yardstick;
  readonly switchedOn: readonly string[];
  readonly setting: HandoutDraft['setting'];
}

function judgedByTopic({ category, foods, plate, plates, ...by }: Judging, isSuppressed: boolean): HandoutSurvey {
  const unsafety = new Map(foods.map(food => [food, isSuppressed ? unsafeFood(food, category.category) : undefined]));
  const offered = foods.filter(food => unsafety.get(food)?.rule !== 'never');
  const ways = { shelf: { foods, plates }, keep: (found: WaysIn) => found.ways };
  const judged = judgeShelf({ ...by, plate, foods: offered, ways }).foods.map(({ food, verdict, waysIn = [] }): HandoutFood => {
    const unsafe = unsafety.get(food);
    return { food, verdict, ways: waysIn, ...(unsafe === undefined ? {} : { unsafe }) };
  });
  return { category, plate, yardstick: by.yardstick, switchedOn: by.switchedOn, foods: judged };
}
