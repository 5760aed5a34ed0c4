import { describe, expect, it } from 'vitest';
import { foodWith } from './plateFixture.ts';
import { portionText } from './portionText.ts';
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
});
