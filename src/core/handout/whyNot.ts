import { byWhatIsTold } from '#core/yardstick/byLabel.ts';
import { kinTitle } from '#core/yardstick/ingredientKin.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { nutrientsOf } from '#core/yardstick/measures/measureFacts.ts';
import { isSodiumToEnergy } from '#core/yardstick/sodiumToEnergy.ts';
import type { Test } from '#core/yardstick/yardstick.ts';
import type { HandoutFood, HandoutSurvey } from './handout.ts';
import type { WhyNot } from './words/words.ts';

/** What decided a verdict: the first test with the verdict's own word. */
export function whyNotOf({ verdict, notTold = [] }: HandoutFood, { yardstick, switchedOn }: HandoutSurvey): WhyNot {
  const deciding = verdict.tests.find(outcome => outcome.verdict === verdict.verdict);
  const test = testsJudged(byWhatIsTold(yardstick, notTold), switchedOn).find(({ id }) => id === deciding?.testId);
  return test === undefined ? { kind: 'other' } : whyNotByTest(test);
}

function whyNotByTest({ measure }: Test): WhyNot {
  if (measure.kind === 'additive') return { kind: 'additive', class: measure.class };
  if (measure.kind === 'ingredient') return { kind: 'ingredient', name: kinTitle(measure.kin) };
  if (isSodiumToEnergy(measure)) return { kind: 'sodium-to-energy' };
  const [nutrient, ...others] = nutrientsOf(measure);
  return nutrient === undefined || others.length > 0 ? { kind: 'other' } : { kind: 'nutrient', nutrient };
}
