import { nutrients } from '#core/quantity/nutrients.ts';
import { sourceText } from './sourceText.ts';
import type { Basis, ClassScale, Measure, Test } from './yardstick.ts';

const basisText: Readonly<Record<Basis, string>> = {
  'per-serving': 'per serving',
  'per-100-g': 'per 100 g',
  'per-100-ml': 'per 100 mL',
  'per-reference-amount': 'per reference amount',
  'as-eaten': 'in the portion as eaten',
  'on-plate': 'on the plate',
  'per-day': 'per day',
};

/** "sodium mg − energy kcal on the plate: at most 0; nearly up to 10 more (common practice, no source)". */
export function testText(test: Test): string {
  const slack = test.slack === undefined ? '' : `; nearly: over by no more than ${test.slack}`;
  const off = test.off ? '; judged only when switched on' : '';
  return `${measureText(test.measure)} ${basisText[test.basis]}: ${boundText(test)}${slack}${off} (${sourceText(test.source)})`;
}

/** "potassium mg in the portion as eaten: low up to 100, medium up to 200, high above (…)". */
export function classScaleText({ nutrient, basis, classes, source }: ClassScale): string {
  const names = classes.map(({ name, upTo }) => (upTo === undefined ? `${name} above` : `${name} up to ${upTo}`));
  return `${inUnit(nutrient)} ${basisText[basis]}: ${names.join(', ')} (${sourceText(source)})`;
}

function measureText(measure: Measure): string {
  switch (measure.kind) {
    case 'nutrient':
      return inUnit(measure.nutrient);
    case 'difference':
      return `${inUnit(measure.nutrient)} − ${inUnit(measure.minus)}`;
    case 'ratio':
      return `${inUnit(measure.nutrient)} for each ${nutrients[measure.per].unit} of ${nutrients[measure.per].name}`;
    case 'daily-value-percent':
      return `${nutrients[measure.nutrient].name} in % of the Daily Value`;
    case 'additive':
      return `${measure.class} additives`;
    case 'ingredient':
      return measure.kin;
  }
}

function boundText({ atMost, atLeast, below }: Test): string {
  if (atMost !== undefined) return `at most ${atMost}`;
  if (atLeast !== undefined) return `at least ${atLeast}`;
  if (below !== undefined) return `under ${below}`;
  return 'none named on the label';
}

function inUnit(nutrient: keyof typeof nutrients): string {
  return `${nutrients[nutrient].name} ${nutrients[nutrient].unit}`;
}
