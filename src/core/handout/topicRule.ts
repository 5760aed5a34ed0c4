import { Fault } from '#core/errors.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { nutrientsOf } from '#core/yardstick/measures/measureFacts.ts';
import { planeRule } from '#core/yardstick/planeRule.ts';
import { isSodiumToEnergy } from '#core/yardstick/sodiumToEnergy.ts';
import { testText } from '#core/yardstick/testText.ts';
import type { Basis, Test } from '#core/yardstick/yardstick.ts';
import { companionsRun } from './companions.ts';
import type { HandoutSurvey } from './handout.ts';
import type { Line } from './handoutPage.ts';
import { foodRun } from './line.ts';
import { figure } from './words/numbers.ts';
import type { BasisWords, Words } from './words/words.ts';

const basisWords: Readonly<Record<Basis, BasisWords>> = {
  'per-serving': 'serving',
  'as-eaten': 'portion',
  'on-plate': 'plate',
  'per-100-g': '100-g',
  'per-100-ml': '100-ml',
  'per-reference-amount': 'reference-amount',
  'per-day': 'day',
};

/**
 * @throws Fault handout-not-valid for a yardstick that bounds potassium or phosphorus: blood tests decide about them, so that a number
 * stands in no handout but one with a signed prescription.
 */
export function refuseMineralTopics(surveys: readonly HandoutSurvey[]): void {
  for (const { yardstick, switchedOn } of surveys) {
    const refused = testsJudged(yardstick, switchedOn).find(boundsMineral);
    if (refused === undefined) continue;
    throw new Fault(
      'handout-not-valid',
      `“${yardstick.title}” bounds potassium or phosphorus (${refused.id}); a handout on a topic sets no such number.`,
    );
  }
}

/** The rule of a topic's yardstick as sentences, and what companions leave room for. */
export function topicRules(surveys: readonly HandoutSurvey[], words: Words): readonly Line[] {
  const [first] = surveys;
  if (first === undefined) return [];
  const tests = testsJudged(first.yardstick, first.switchedOn);
  const rooms = surveys.flatMap(({ plate }) => {
    const rule = plate.companions.length === 0 ? null : planeRule(tests, plate);
    if (rule?.slope !== 1 || rule.offset < 1) return [];
    return [words.companionRoom(companionsRun(plate, words), `${figure(Math.floor(rule.offset), 0)} mg`)];
  });
  return [...tests.map(test => ruleLine(test, words)), ...rooms];
}

function boundsMineral({ measure }: Test): boolean {
  const looksAt = nutrientsOf(measure);
  return looksAt.includes('potassiumMg') || looksAt.includes('phosphorusMg');
}

/** Whether a yardstick looks at sodium at all. */
export function looksAtSodium({ yardstick, switchedOn }: HandoutSurvey): boolean {
  return testsJudged(yardstick, switchedOn).some(({ measure }) => nutrientsOf(measure).includes('sodiumMg'));
}

function ruleLine(test: Test, words: Words): Line {
  const { measure, atMost, below, basis } = test;
  if (measure.kind === 'additive') return words.additiveRule(measure.class);
  if (measure.kind === 'ingredient') return words.ingredientRule(foodRun(measure.kin));
  if (measure.kind === 'nutrient' && measure.nutrient === 'sodiumMg' && (atMost ?? below) !== undefined) {
    const most = `${figure((atMost ?? below)!)} mg`;
    return words.sodiumRule(words.asked({ kind: atMost === undefined ? 'below' : 'at-most', figure: most }), basisWords[basis]);
  }
  if (isSodiumToEnergy(measure) && atMost === 0 && basis === 'on-plate') return words.sodiumToEnergy;
  return words.otherRule({ kind: 'english', text: testText(test) });
}
