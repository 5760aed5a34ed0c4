import { byWhatIsTold } from '#core/yardstick/byLabel.ts';
import { kinTitle } from '#core/yardstick/ingredientKin.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import type { Test } from '#core/yardstick/yardstick.ts';
import type { HandoutFood, HandoutSurvey } from './handout.ts';
import type { Bar } from './words/words.ts';

/** What decided a verdict: the first test with the verdict's own word. */
export function barOf({ verdict, notTold = [] }: HandoutFood, { yardstick, switchedOn }: HandoutSurvey): Bar {
  const deciding = verdict.tests.find(outcome => outcome.verdict === verdict.verdict);
  const test = testsJudged(byWhatIsTold(yardstick, notTold), switchedOn).find(({ id }) => id === deciding?.testId);
  return test === undefined ? { kind: 'other' } : barOfTest(test);
}

function barOfTest({ measure }: Test): Bar {
  switch (measure.kind) {
    case 'nutrient':
    case 'daily-value-percent':
      return { kind: 'nutrient', nutrient: measure.nutrient };
    case 'difference':
      return measure.nutrient === 'sodiumMg' && measure.minus === 'energyKcal' ? { kind: 'sodium-to-energy' } : { kind: 'other' };
    case 'additive':
      return { kind: 'additive', class: measure.class };
    case 'ingredient':
      return { kind: 'ingredient', name: kinTitle(measure.kin) };
    default:
      return { kind: 'other' };
  }
}
