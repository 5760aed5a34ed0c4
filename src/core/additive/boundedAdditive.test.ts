import { describe, expect, test } from 'vitest';
import { parseStatement } from '#core/statement/parseStatement.ts';
import type { Ingredient } from '#core/statement/statement.ts';
import { findAdditives } from './findAdditives.ts';

/**
 * Ways of saying "at most so much". The first six stand in statements of FoodData Central branded foods (USDA, public domain), mostly
 * before an anticaking agent of a seasoning; the others are what a writer may put in their place. Each tells that something IS there.
 */
const bounds = [
  'no more than',
  'not more than',
  'up to',
  'less than',
  'and not more than',
  '<',
  'with no more than',
  'with not over',
  'not above',
  'not exceeding',
  'not to exceed',
  'not in excess of',
  'no greater than',
  'does not exceed',
  'shall not exceed',
  'at most',
  'below',
  'under',
  'maximum',
  'a maximum of',
  'max',
  'max.',
];
const percents = ['2%', '2 %', '2 PERCENT', 'two percent', '2 pct'];
/** Where the wording stands; "@" is bound and percentage. */
const places = [
  'CHEESE (MILK, SALT), STARCH, @ TRICALCIUM PHOSPHATE',
  'WHEY, GARLIC (SALT, @ TRICALCIUM PHOSPHATE ADDED AS ANTICAKING AGENT), ONION',
  'WHEY, SALT [@ TRICALCIUM PHOSPHATE], ONION',
  'WHEY, SALT, TRICALCIUM PHOSPHATE (@), ONION',
  'WHEY, SALT, TRICALCIUM PHOSPHATE @.',
  'WHEY, SALT, CONTAINS @ OF: SUGAR, TRICALCIUM PHOSPHATE',
];
const casings: readonly ((text: string) => string)[] = [
  text => text,
  text => text.toLowerCase(),
  text => text.toUpperCase(),
  text => text.replaceAll(' ', '\n'),
];

function ingredientAt(list: readonly Ingredient[], start: number): Ingredient | undefined {
  const covering = list.find(one => one.start <= start && start < one.end);
  return covering === undefined ? undefined : (ingredientAt(covering.parts, start) ?? covering);
}

describe('a bound tells a presence', () => {
  test.each(bounds)('[ADD-14] [STM-4] "%s" a percentage: the phosphate is there, counts, and is at most 2 percent', bound => {
    // Nobody writes the sign "<" before a word.
    for (const percent of percents.filter(one => bound !== '<' || one.startsWith('2')))
      for (const place of places)
        for (const cased of casings) {
          const text = cased(place.replace('@', `${bound} ${percent}`));
          const { value } = parseStatement(text);
          const [phosphate, ...others] = findAdditives(value).filter(finding => finding.class === 'phosphate');
          expect(phosphate, text).toMatchObject({ id: 'tricalcium-phosphate', counts: true, certainty: 'named' });
          expect(phosphate!.why, text).not.toMatch(/holds no/);
          expect(others, text).toEqual([]);
          const ingredient = ingredientAt(value.ingredients, phosphate!.start);
          expect(ingredient?.atMostPercent, text).toBe(2);
          expect(ingredient?.sharePercent.hi, text).toBeLessThanOrEqual(2);
        }
  });

  // The wording of a real seasoning (FoodData Central 580260, USDA, public domain), with the phosphate in place of the silicate.
  test('[ADD-14] "AND NOT MORE THAN 2% EACH": both names are there', () => {
    const { value } = parseStatement(
      'SALT, CITRIC ACID, AND NOT MORE THAN 2% EACH TRICALCIUM PHOSPHATE AND SODIUM PHOSPHATE ADDED AS ANTICAKING AGENTS',
    );
    const counted = findAdditives(value).filter(finding => finding.class === 'phosphate' && finding.counts);
    expect(counted.map(({ id }) => id)).toEqual(['tricalcium-phosphate', 'sodium-phosphates']);
    for (const { start } of counted) expect(ingredientAt(value.ingredients, start)?.atMostPercent).toBe(2);
  });
});
