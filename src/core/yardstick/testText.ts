import { nutrients } from '#core/quantity/nutrients.ts';
import { type BoundTest, isBoundTest } from './boundTest.ts';
import { absenceSubject, isNumberMeasure } from './measures/measureFacts.ts';
import { sourceText } from './sourceText.ts';
import { toldTest } from './toldTest.ts';
import type { Basis, ClassScale, Test } from './yardstick.ts';

export const basisText: Readonly<Record<Basis, string>> = {
  'per-serving': 'per serving',
  'per-100-g': 'per 100 g',
  'per-100-ml': 'per 100 mL',
  'per-reference-amount': 'per reference amount',
  'as-eaten': 'in the portion as eaten',
  'on-plate': 'on the plate',
  'per-day': 'per day',
};

/**
 * "Sodium in mg no more than energy in kcal on the plate; nearly: over by no more than 10 mg (common practice, no source)",
 * "Sodium per serving: at most 140 mg (21 CFR 101.61)".
 */
export function testText(test: Test): string {
  const text = isBoundTest(test) ? boundTestText(test) : absenceText(test);
  const estimates = test.useEstimates ? '; estimates may be used, at their safe end' : '';
  const off = test.off ? '; judged only when switched on' : '';
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${estimates}${off} (${sourceText(test.source)})`;
}

function boundTestText(test: BoundTest): string {
  const { facts, boundWords, isMinimum, slack, slackWords } = toldTest(test);
  const basis = basisText[test.basis];
  const bound = facts.subject === undefined ? `${boundWords} ${basis}` : `${facts.subject} ${basis}: ${boundWords}`;
  return slack === 0 ? bound : `${bound}; nearly: ${isMinimum ? 'short' : 'over'} by no more than ${slackWords}`;
}

function absenceText({ measure, basis }: Test): string {
  const subject = isNumberMeasure(measure) ? measure.nutrient : absenceSubject(measure);
  return `${subject} ${basisText[basis]}: none named on the label`;
}

/** "potassium mg in the portion as eaten: low up to 100, medium up to 200, high above (…)". */
export function classScaleText({ nutrient, basis, classes, source }: ClassScale): string {
  const names = classes.map(({ name, upTo }) => (upTo === undefined ? `${name} above` : `${name} up to ${upTo}`));
  return `${nutrients[nutrient].name} ${nutrients[nutrient].unit} ${basisText[basis]}: ${names.join(', ')} (${sourceText(source)})`;
}
