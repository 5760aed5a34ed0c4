import { describe, expect, it } from 'vitest';
import { foodWith } from './plateFixture.ts';
import { countText, portionText } from './portionText.ts';
import { scalePortion } from './scalePortion.ts';
import { largestByScale, largestInMeasures, largestSplit, smallestByScale, smallestInMeasures } from './wholeMeasures.ts';

const slices = foodWith('Slices', { serving: { household: '4 slices', grams: 56 } });
const sauce = foodWith('Sauce', { serving: { household: '1/2 cup', grams: 125 } });

describe('whole measures', () => {
  it('[PLT-6] slices go in ones', () => {
    expect(largestInMeasures(slices, 0.7)).toEqual({ measure: 'slice', count: 2 });
    expect(largestInMeasures(slices, 0.2)).toBeUndefined();
    expect(smallestInMeasures(slices, 1.1)).toEqual({ measure: 'slice', count: 5 });
  });

  it('[PLT-6] cups go by quarters and thirds (21 CFR 101.9(b)(5)(i)), and spoons where a cup is too much', () => {
    expect(largestInMeasures(sauce, 0.9)).toEqual({ measure: 'cup', count: 1 / 3 });
    expect(largestInMeasures(sauce, 0.6)).toEqual({ measure: 'cup', count: 1 / 4 });
    // A third of 1/2 cup is 40 mL, 2.67 tablespoons of 15 mL.
    expect(largestInMeasures(sauce, 1 / 3)).toEqual({ measure: 'tablespoon', count: 2.5 });
  });

  it('[PLT-6] a scale shows whole grams', () => {
    expect(largestByScale(slices, 0.99)).toEqual({ grams: 55 });
    expect(smallestByScale(slices, 1.01)).toEqual({ grams: 57 });
    expect(largestByScale(foodWith('Drink', { serving: { milliliters: 240 } }), 0.501)).toEqual({ milliliters: 120 });
    expect(largestByScale(foodWith('Bare', {}), 0.8)).toEqual({ servings: 0.75 });
  });

  it('[PLT-6] a split leaves two parts that can be measured', () => {
    expect(largestSplit(1 / 2, 0.4, 'cup')).toBe(1 / 4);
    expect(largestSplit(4, 3.9, 'slice')).toBe(3);
    expect(largestSplit(1, 0.9, 'slice')).toBe(0);
  });

  it('[PLT-6] portions read as a kitchen writes them', () => {
    expect(portionText({ measure: 'slice', count: 2 })).toBe('2 slices');
    expect(portionText({ measure: 'cup', count: 1 / 3 })).toBe('1/3 cup');
    expect(portionText({ measure: 'tbsp', count: 2.5 })).toBe('2 1/2 tablespoons');
    expect(portionText({ servings: 1 })).toBe('1 serving');
    expect(portionText({ grams: 62.5 })).toBe('62.5 g');
    expect(portionText({ measure: 'patty', count: 3 })).toBe('3 patties');
  });

  // 21 CFR 101.9(b)(5)(i): cups by quarters and thirds; what a kitchen has of spoons and scales.
  it.each([
    ['1 cup', 0.99, 'cup', 3 / 4],
    ['1 cup', 0.7, 'cup', 2 / 3],
    ['1 cup', 1, 'cup', 1],
    ['1 cup', 0.24, 'tablespoon', 3.5],
    ['3 Tbsp', 0.9, 'tablespoon', 2.5],
    ['1 Tbsp', 0.4, 'teaspoon', 1],
    ['1 tsp', 0.6, 'teaspoon', 1 / 2],
    ['8 fl oz', 0.45, 'fluid ounce', 3.5],
    ['3 oz', 0.6, 'ounce', 1.5],
    ['2 patties', 0.9, 'patty', 1],
  ])('[PLT-6] of "%s" %d are at most %s %d', (household, factor, measure, count) => {
    const portion = largestInMeasures(foodWith('Food', { serving: { household } }), factor);
    expect(portion).toEqual({ measure, count: expect.closeTo(count, 9) });
  });

  it.each([
    ['1 cup', 0.6, 'cup', 2 / 3],
    ['1 cup', 0.7, 'cup', 3 / 4],
    ['1 cup', 0.25, 'cup', 1 / 4],
    ['2 Tbsp', 0.6, 'tablespoon', 1.5],
    ['4 slices', 1, 'slice', 4],
  ])('[PLT-6] of "%s" %d are at least %s %d', (household, factor, measure, count) => {
    const portion = smallestInMeasures(foodWith('Food', { serving: { household } }), factor);
    expect(portion).toEqual({ measure, count: expect.closeTo(count, 9) });
  });

  it('[PLT-6] without a measure, or less than the smallest, there is none', () => {
    const bare = foodWith('Bare', {});
    expect([largestInMeasures(bare, 1), smallestInMeasures(bare, 1)]).toEqual([undefined, undefined]);
    expect(largestInMeasures(foodWith('Pinch', { serving: { household: '1 tsp' } }), 0.2)).toBeUndefined();
    expect(largestByScale(slices, 0.01)).toBeUndefined();
    expect(largestByScale(foodWith('Drink', { serving: { milliliters: 240 } }), 0.001)).toBeUndefined();
    expect(largestByScale(bare, 0.2)).toBeUndefined();
    expect(largestByScale(slices, 1)).toEqual({ grams: 56 });
    expect(smallestByScale(slices, 1)).toEqual({ grams: 56 });
    expect(smallestByScale(bare, 0.8)).toEqual({ servings: 1 });
  });

  it('[PLT-6] the largest split counts, up to the most', () => {
    expect(largestSplit(1, 0.9, 'cup')).toBe(3 / 4);
    expect(largestSplit(1, 0.7, 'cup')).toBeCloseTo(2 / 3, 9);
    expect(largestSplit(1, 0.5, 'cup')).toBe(1 / 2);
    expect(largestSplit(1, 0.2, 'cup')).toBe(0);
    expect(largestSplit(3, 2, 'tablespoon')).toBe(2);
  });

  it('[PLT-6] more counts and nouns as a kitchen writes them', () => {
    expect([1 / 8, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1, 1.25, 2.999_999_999_9, 0.2, 1.234].map(countText)).toEqual([
      ...['1/8', '1/4', '1/3', '1/2', '2/3', '3/4', '1', '1 1/4', '3', '0.2', '1.23'],
    ]);
    expect(portionText({ milliliters: 120.25 })).toBe('120.3 mL');
    expect(portionText({ grams: 1 / 3 })).toBe('0.3 g');
    expect(portionText({ measure: 'box', count: 2 })).toBe('2 boxes');
    expect(portionText({ measure: 'sandwich', count: 2 })).toBe('2 sandwiches');
    expect(portionText({ measure: 'tray', count: 2 })).toBe('2 trays');
    expect(portionText({ servings: 1.5 })).toBe('1 1/2 servings');
  });

  it('[PLT-1] as much again of a portion stays in its measure', () => {
    expect(scalePortion({ grams: 50 }, 3)).toEqual({ grams: 150 });
    expect(scalePortion({ milliliters: 50 }, 3)).toEqual({ milliliters: 150 });
    expect(scalePortion({ servings: 0.5 }, 3)).toEqual({ servings: 1.5 });
    expect(scalePortion({ measure: 'slice', count: 4 }, 0.5)).toEqual({ measure: 'slice', count: 2 });
  });
});
