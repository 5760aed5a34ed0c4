import type { Reading } from '#core/errors.ts';
import { type Interval, interval } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { type LabelIssue, type LabelIssueCode, labelIssue } from '../labelIssue.ts';
import { isVitaminOrMineral, twoPercentOfDailyValue } from './usPrintRule.ts';

/**
 * What "Not a significant source of" says: an upper bound, never "unknown". 21 CFR 101.9(c)(2)-(c)(8) where the phrase
 * replaces a line, (f)(1) for the items of the simplified panel. Potassium is 0 up to 94 mg, 2 % of its Daily Value.
 */
export function notSignificantRange(nutrient: Nutrient): Interval {
  return interval(0, isVitaminOrMineral(nutrient) ? twoPercentOfDailyValue(nutrient) : insignificantUpTo[nutrient]);
}

const insignificantUpTo: Readonly<Record<Nutrient, number>> = {
  energyKcal: 5,
  fatG: 0.5,
  saturatedFatG: 0.5,
  transFatG: 0.5,
  cholesterolMg: 2,
  sodiumMg: 5,
  carbohydrateG: 1,
  fiberG: 1,
  totalSugarsG: 1,
  addedSugarsG: 1,
  sugarAlcoholG: 1,
  proteinG: 1,
  alcoholG: 0.5,
  waterMl: 0.5,
  vitaminDMcg: 0,
  calciumMg: 0,
  ironMg: 0,
  potassiumMg: 0,
  phosphorusMg: 0,
  magnesiumMg: 0,
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

const nutrientNamed: ReadonlyMap<string, Nutrient> = new Map<string, Nutrient>([
  ['calories', 'energyKcal'],
  ['energy', 'energyKcal'],
  ['fat', 'fatG'],
  ['total fat', 'fatG'],
  ['saturated fat', 'saturatedFatG'],
  ['sat fat', 'saturatedFatG'],
  ['trans fat', 'transFatG'],
  ['cholesterol', 'cholesterolMg'],
  ['sodium', 'sodiumMg'],
  ['carbohydrate', 'carbohydrateG'],
  ['carbohydrates', 'carbohydrateG'],
  ['total carbohydrate', 'carbohydrateG'],
  ['fiber', 'fiberG'],
  ['fibre', 'fiberG'],
  ['dietary fiber', 'fiberG'],
  ['dietary fibre', 'fiberG'],
  ['sugars', 'totalSugarsG'],
  ['sugar', 'totalSugarsG'],
  ['total sugars', 'totalSugarsG'],
  ['added sugars', 'addedSugarsG'],
  ['added sugar', 'addedSugarsG'],
  ['sugar alcohol', 'sugarAlcoholG'],
  ['sugar alcohols', 'sugarAlcoholG'],
  ['protein', 'proteinG'],
  ['vitamin d', 'vitaminDMcg'],
  ['calcium', 'calciumMg'],
  ['iron', 'ironMg'],
  ['potassium', 'potassiumMg'],
  ['phosphorus', 'phosphorusMg'],
  ['magnesium', 'magnesiumMg'],
]);

const passedOver: ReadonlySet<string> = new Set([
  'calories from fat',
  'calories from saturated fat',
  'polyunsaturated fat',
  'monounsaturated fat',
  'vitamin a',
  'vitamin c',
]);
