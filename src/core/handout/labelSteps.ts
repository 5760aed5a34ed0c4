import type { AdditiveClass } from '#core/additive/additive.ts';
import { additivesRuledOut } from '#core/yardstick/clientYardstick.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { avoidedRun } from './avoidedRun.ts';
import type { HandoutDraft, HandoutSurvey } from './handout.ts';
import type { Line } from './handoutPage.ts';
import { joined, outsideRun } from './line.ts';
import { askedOf, hasSodiumLimit, mealBounds, mealsOf } from './numbers.ts';
import { looksAtSodium, topicRules } from './topicRule.ts';
import type { Words } from './words/words.ts';

/** Which ingredient words this reader looks for: what the signed prescription, or the topic's yardstick, does not want named. */
export interface LookFor {
  readonly sodium: boolean;
  readonly phosphate: boolean;
  readonly potassium: boolean;
  readonly avoided: readonly string[];
}

export function lookFor(draft: HandoutDraft, surveys: readonly HandoutSurvey[]): LookFor {
  const { prescription, avoidedFoods } = draft;
  const tests = prescription === undefined ? surveys.flatMap(one => testsJudged(one.yardstick, one.switchedOn)) : [];
  const unnamed = (kind: AdditiveClass) =>
    (prescription && additivesRuledOut(prescription.targets).some(([, ruledOut]) => ruledOut === kind)) ??
    tests.some(({ measure }) => measure.kind === 'additive' && measure.class === kind);
  const kin = tests.flatMap(({ measure }) => (measure.kind === 'ingredient' ? [measure.kin] : []));
  return {
    sodium: prescription === undefined ? surveys.some(looksAtSodium) : hasSodiumLimit(draft),
    phosphate: unnamed('phosphate'),
    potassium: unnamed('potassium'),
    avoided: [...new Set([...avoidedFoods, ...kin])],
  };
}

/** Steps of reading a label, with this reader's numbers. */
export function labelSteps(draft: HandoutDraft, surveys: readonly HandoutSurvey[], words: Words): readonly Line[] {
  const { steps } = words;
  const look = lookFor(draft, surveys);
  const readsWords = look.phosphate || look.potassium || look.avoided.length > 0;
  return [
    steps.serving,
    ...sodiumSteps(draft, surveys, words),
    ...(look.sodium ? [steps.percent] : []),
    ...mineralSteps(draft, words),
    ...(readsWords ? [steps.ingredients] : []),
    ...(look.phosphate ? [steps.phosphate] : []),
    ...(look.potassium ? [steps.potassium] : []),
    ...(look.avoided.length > 0 ? [steps.avoided(look.avoided.map(word => avoidedRun(word, draft.language)))] : []),
    ...(readsWords ? [steps.noneNamed] : []),
    steps.again,
  ];
}

function sodiumSteps(draft: HandoutDraft, surveys: readonly HandoutSurvey[], words: Words): readonly Line[] {
  if (draft.prescription !== undefined) return [numberStep('sodium', draft, words) ?? words.noSodiumNumber];
  if (surveys.length === 0) return [words.noSodiumNumber];
  if (!surveys.some(looksAtSodium)) return [];
  // "The rule at the top" stands there only with one of these parts.
  const isOnThePage = draft.parts.includes('fridge') || draft.parts.includes('numbers');
  return isOnThePage ? [words.steps.sodiumOfTopic] : topicRules(surveys, words);
}

/** Potassium and phosphorus, where a number was signed; labels seldom print phosphorus. */
function mineralSteps(draft: HandoutDraft, words: Words): readonly Line[] {
  return (['potassium', 'phosphorus'] as const).flatMap(item => {
    const step = numberStep(item, draft, words);
    return step === undefined ? [] : [joined([step, words.steps.notPrinted])];
  });
}

function numberStep(item: 'sodium' | 'potassium' | 'phosphorus', draft: HandoutDraft, words: Words): Line | undefined {
  const { prescription } = draft;
  const target = prescription?.targets.find(one => one.item === item);
  const day = target && askedOf(target, words);
  if (prescription === undefined || day === undefined) return undefined;
  const meals = mealsOf(draft).flatMap(({ name, percent }) => {
    const most = mealBounds(prescription, percent).get(item);
    return most === undefined ? [] : [[outsideRun(words.mealInSentence(name)), words.asked(most)] as const];
  });
  return meals.length === 0 ? words.dayTarget(words.targetNames[item], day) : words.steps.numberOfClient(item, day, meals);
}
