import { evenPattern } from '#core/client/record.ts';
import { Fault } from '#core/errors.ts';
import type { HandoutCategory, HandoutDraft, HandoutFood, HandoutInput, HandoutSurvey } from '#core/handout/handout.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { clientYardstick } from '#core/yardstick/clientYardstick.ts';
import { prepareJudge, servedOn } from '#core/yardstick/judgePlate.ts';
import { companionTotals } from '#core/yardstick/served.ts';
import { prepareWaysIn } from '#core/yardstick/waysIn.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';

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
}

/**
 * What a handout is built from: each category judged on its plate, by the meal's share of the signed prescription or by the topic's
 * yardstick, with ways in for what is over or nearly.
 *
 * @throws Fault handout-not-valid when there is neither a prescription nor a yardstick, or a category names a meal that is none.
 */
export function surveysForHandout({ draft, categories, topicYardstick, useEstimates = false }: HandoutMaterial): HandoutInput {
  const { prescription, avoidedFoods } = draft;
  const pattern = draft.meals.length > 0 ? draft.meals : evenPattern;
  const plates = categories.map(({ plate }) => plate);
  const surveys = categories.map(({ category, foods, plate }): HandoutSurvey => {
    if (prescription === undefined) {
      if (topicYardstick === undefined)
        throw new Fault('handout-not-valid', `The handout "${draft.id}" has no prescription and no yardstick.`);
      const switchedOn = draft.topic?.switchedOn ?? [];
      return judged({ category, foods, plate, plates, yardstick: topicYardstick, switchedOn, setting: draft.setting });
    }
    const share = category.meal === undefined ? pattern[0]! : pattern.find(({ name }) => name === category.meal);
    if (share === undefined) throw new Fault('handout-not-valid', `"${category.meal}" is no meal of the handout "${draft.id}".`);
    const bounds = { targets: prescription.targets, avoidedFoods, useEstimates };
    const yardstick = clientYardstick({ ...bounds, percent: share.percent, meal: share.name });
    const dayYardstick = clientYardstick({ ...bounds, percent: 100, meal: 'the day' });
    return judged({ category, foods, plate, plates, yardstick, switchedOn: [], dayYardstick });
  });
  return { draft, surveys };
}

interface Judging extends CategoryMaterial {
  readonly plates: readonly Plate[];
  readonly yardstick: Yardstick;
  readonly switchedOn: readonly string[];
  readonly setting?: HandoutDraft['setting'];
  readonly dayYardstick?: Yardstick;
}

function judged({ category, foods, plate, plates, yardstick, switchedOn, setting, dayYardstick }: Judging): HandoutSurvey {
  const input = { plate, yardstick, switchedOn, ...(setting === undefined ? {} : { setting }) };
  const judge = prepareJudge(input);
  const waysIn = prepareWaysIn({ ...input, shelf: { foods, plates } });
  const companions = companionTotals(plate.companions);
  const all = foods.map((food): HandoutFood => {
    const verdict = judge(servedOn(plate, companions, food));
    const wanted = verdict.verdict === 'over' || verdict.verdict === 'nearly';
    return { food, verdict, ways: wanted ? waysIn(food, verdict).ways : [] };
  });
  return { category, plate, yardstick, switchedOn, ...(dayYardstick === undefined ? {} : { dayYardstick }), foods: all };
}
