import { isMost, isNeed } from '#core/client/aims/limitKind.ts';
import { householdFluid } from '#core/client/prescription/householdFluid.ts';
import { fluidOnPlate } from '#core/plate/fluid.ts';
import { type AimedFood, aimRank, notToldOfAims } from '#core/yardstick/aimOrder.ts';
import { additivesRuledOut } from '#core/yardstick/clientYardstick.ts';
import type { HandoutDraft, HandoutFood, HandoutSurvey } from './handout.ts';
import { namesPotassium } from './namesPotassium.ts';
import type { Words } from './words/words.ts';

/** A food of a survey as the client's aims look at it. */
export function aimedFood({ food, unsafe }: HandoutFood, { plate, category, useEstimates = false }: HandoutSurvey): AimedFood {
  return { food, plate, category: category.category, unsafe, useEstimates };
}

export function rankOf(one: HandoutFood, survey: HandoutSurvey, { aims = [] }: HandoutDraft): readonly number[] {
  return aimRank(aims, aimedFood(one, survey));
}

/** What stands on a food beside its marks: which amounts it was picked by and nobody knows, and how much of it counts as fluid. */
export function aimMarks(one: HandoutFood, survey: HandoutSurvey, draft: HandoutDraft, words: Words): readonly string[] {
  const { notTold = [] } = one;
  const unknown = notToldOfAims(draft.aims ?? [], aimedFood(one, survey)).flatMap(of => {
    if (of === 'fluidMl') return [];
    return (of === 'phosphorusMg' && notTold.includes('phosphorus')) || (of === 'potassiumMg' && notTold.includes('potassium')) ? [] : [of];
  });
  return [...(unknown.length === 0 ? [] : [words.amountsNotKnown(unknown)]), ...fluidMark(one, survey, draft, words)];
}

/** "Counts as 1 of your 4 cups of fluid": all that is on the plate, up to the next quarter cup. A limit of 1,000 mL is 4 cups. */
function fluidMark(
  { food }: HandoutFood,
  { plate, category }: HandoutSurvey,
  { prescription }: HandoutDraft,
  words: Words,
): readonly string[] {
  const target = prescription?.targets.find(({ item }) => item === 'fluid');
  const day = target?.range && householdFluid(target.range, target.limit ?? 'within');
  if (target === undefined || day === undefined || !(isMost(target) || isNeed(target))) return [];
  const fluid = fluidOnPlate(plate, food, category.category);
  if (fluid.kind === 'none') return [];
  if (fluid.kind === 'not-known') return [words.fluidNotKnown];
  const cups = householdFluid({ lo: fluid.milliliters, hi: fluid.milliliters }, 'at-least');
  return cups === undefined ? [] : [words.countsAsFluid(cups, day, isMost(target) ? 'most' : 'need')];
}

/** Whether a potassium salt speaks against a food for this reader: always, but where more potassium is what was signed and its salts were not ruled out. */
export function keepsFromPotassium({ food }: HandoutFood, { prescription }: HandoutDraft): boolean {
  const targets = prescription?.targets ?? [];
  const isNeeded = targets.some(one => one.item === 'potassium' && isNeed(one));
  const isRuledOut = additivesRuledOut(targets).some(([, kind]) => kind === 'potassium');
  return namesPotassium(food) && !(isNeeded && !isRuledOut);
}
