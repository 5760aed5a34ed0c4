import { onPlate, plateTotal } from '#core/plate/plateAmounts.ts';
import { portionText } from '#core/plate/portionText.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { type PlaneRule, planeRule } from '#core/yardstick/planeRule.ts';
import { testText } from '#core/yardstick/testText.ts';
import { portionFigures, portionWords, totalFigure } from './figures.ts';
import type { GuideSurvey, GuideSurveyFood } from './guide.ts';
import type { GuideRule, WorkedExample } from './guidePage.ts';
import { settingWords } from './settingWords.ts';

/** The rule in words and numbers; the example is a food of the survey, worked in front of the reader. */
export function guideRule({ plate, yardstick, setting }: GuideSurvey, switchedOn: readonly string[], example?: GuideSurveyFood): GuideRule {
  const tests = testsJudged(yardstick, switchedOn);
  const line = planeRule(tests, plate) ?? undefined;
  return {
    yardstick: yardstick.title,
    plate: `${portionText(plate.portion)}; plate: ${plate.title}`,
    ...(setting === undefined ? {} : { setting: settingWords[setting] }),
    tests: tests.map(testText),
    ...(line === undefined ? {} : { line, allowance: allowanceWords(plate, line) }),
    ...(example === undefined ? {} : { example: workedExample(example, plate) }),
  };
}

/** "Low-sodium bread (2 slices): 160 kcal, 20 mg sodium. So a portion may hold as many mg of sodium as it has kcal, and 140 mg more." */
function allowanceWords(plate: GuideSurvey['plate'], line: PlaneRule): string {
  const bring = plate.companions.map(part => {
    const energy = totalFigure('energyKcal', plateTotal([part], 'energyKcal'));
    const sodium = totalFigure('sodiumMg', plateTotal([part], 'sodiumMg'));
    return `${part.food.name} (${portionText(part.portion)}): ${energy.text}, ${sodium.text}.`;
  });
  return [...bring, `${bring.length > 0 ? 'So a portion' : 'A portion'} may hold ${lineWords(line)}.`].join(' ');
}

/** "as many mg of sodium as it has kcal, and 140 mg more", "at most 140 mg of sodium". */
export function lineWords({ slope, offset }: PlaneRule): string {
  const shown = roundHalfUp(Math.abs(offset), 1);
  if (slope === 0) return offset < 0 ? 'no sodium at all' : `at most ${shown} mg of sodium`;
  const lead = slope === 1 ? 'as many mg of sodium as it has kcal' : `${roundHalfUp(slope, 2)} mg of sodium for each of its kcal`;
  if (shown === 0) return `${lead}, no more`;
  return `${lead}, ${offset > 0 ? 'and' : 'less'} ${shown} mg${offset > 0 ? ' more' : ''}`;
}

function workedExample({ food, verdict }: GuideSurveyFood, plate: GuideSurvey['plate']): WorkedExample {
  const [energy, sodium] = portionFigures(food, plate.portion);
  const companions = plate.companions.map(part => ({
    what: `${part.food.name}, ${portionText(part.portion)}`,
    energy: totalFigure('energyKcal', plateTotal([part], 'energyKcal')).text,
    sodium: totalFigure('sodiumMg', plateTotal([part], 'sodiumMg')).text,
  }));
  const rows = [{ what: `${food.name}, ${portionWords(food, plate.portion)}`, energy: energy!.text, sodium: sodium!.text }, ...companions];
  const total = {
    what: 'On the plate',
    energy: totalFigure('energyKcal', onPlate(plate, food, 'energyKcal')).text,
    sodium: totalFigure('sodiumMg', onPlate(plate, food, 'sodiumMg')).text,
  };
  return { name: food.name, rows: companions.length === 0 ? rows : [...rows, total], outcome: verdict.why };
}
