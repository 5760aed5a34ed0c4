import type { Reading } from '#core/errors.ts';
import { type Interval, interval } from '#core/quantity/interval.ts';
import { type Nutrient, nutrientKeys, nutrients, type UsPrintRule } from '#core/quantity/nutrients.ts';
import { type LabelIssue, type LabelIssueCode, labelIssue } from '../labelIssue.ts';
import { twoPercentOfDailyValue, usPrintRule } from './usPrintRule.ts';

/**
 * What "Not a significant source of" says: an upper bound, never "unknown". 21 CFR 101.9(c)(2)-(c)(8) where the phrase
 * replaces a line, (f)(1) for the items of the simplified panel. Potassium is 0 up to 94 mg, 2 % of its Daily Value.
 */
export function notSignificantRange(nutrient: Nutrient): Interval {
  const rule = usPrintRule[nutrient];
  return interval(0, rule === 'tenth' || rule === 'ten' ? twoPercentOfDailyValue(nutrient) : insignificantUpTo[rule]);
}

const insignificantUpTo: Readonly<Record<Exclude<UsPrintRule, 'tenth' | 'ten'>, number>> = {
  energy: 5,
  fat: 0.5,
  cholesterol: 2,
  sodium: 5,
  gram: 1,
  none: 0.5,
};

const longestSentence = 2000;

/**
 * The nutrients named by "Not a significant source of saturated fat, trans fat, and iron". Names the workbench knows no
 * nutrient for are reported and left alone; those it has no use for (vitamin A, calories from fat) are passed over.
 */
export function readNotSignificant(words: string): Reading<readonly Nutrient[], LabelIssueCode> {
  const where = 'notSignificantSourceOf';
  if (words.length > longestSentence) {
    return { value: [], issues: [labelIssue('nutrient-not-known', where, words, `at most ${longestSentence} characters`)] };
  }
  const found = new Set<Nutrient>();
  const issues: LabelIssue[] = [];
  const list = words
    .toLowerCase()
    .replace('not a significant source of', '')
    .replaceAll('&', ',')
    .replaceAll(';', ',')
    .replaceAll('.', ',');
  for (const piece of list.split(',')) {
    for (const name of namesIn(piece)) {
      const nutrient = nutrientNamed.get(name);
      if (nutrient !== undefined) found.add(nutrient);
      else if (!passedOver.has(name)) issues.push(labelIssue('nutrient-not-known', where, name, 'a nutrient as panels name it'));
    }
  }
  return { value: [...found], issues };
}

/** "calcium and iron" is two names, "or" and "and/or" join names too. */
function namesIn(piece: string): string[] {
  const names: string[] = [];
  let name = '';
  for (const word of piece.replaceAll('/', ' ').split(/\s/u)) {
    if (word === 'and' || word === 'or') {
      names.push(name);
      name = '';
    } else if (word !== '') name = name === '' ? word : `${name} ${word}`;
  }
  names.push(name);
  return names.filter(each => each !== '');
}

/** Names that sentences use beside the nutrient's own and the panel's. */
const furtherNames: readonly (readonly [string, Nutrient])[] = [
  ['fat', 'fatG'],
  ['sat fat', 'saturatedFatG'],
  ['carbohydrate', 'carbohydrateG'],
  ['carbohydrates', 'carbohydrateG'],
  ['fiber', 'fiberG'],
  ['fibre', 'fiberG'],
  ['dietary fibre', 'fiberG'],
  ['sugars', 'totalSugarsG'],
  ['sugar', 'totalSugarsG'],
  ['added sugar', 'addedSugarsG'],
  ['sugar alcohols', 'sugarAlcoholG'],
];

const nutrientNamed: ReadonlyMap<string, Nutrient> = new Map<string, Nutrient>([
  ...nutrientKeys.filter(key => usPrintRule[key] !== 'none').flatMap(namesOf),
  ...furtherNames,
]);

function namesOf(key: Nutrient): readonly (readonly [string, Nutrient])[] {
  const { name, printedName } = nutrients[key];
  return [name, printedName].map(one => [one.toLowerCase(), key] as const);
}

const passedOver: ReadonlySet<string> = new Set([
  'calories from fat',
  'calories from saturated fat',
  'polyunsaturated fat',
  'monounsaturated fat',
  'vitamin a',
  'vitamin c',
]);
