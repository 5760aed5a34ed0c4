import { describe, expect, test } from 'vitest';
import { computed } from '../../../../test/processorTime.ts';
import { notSignificantRange, readNotSignificant } from './notSignificant.ts';

describe('"Not a significant source of"', () => {
  // 21 CFR 101.9(c)(2)-(c)(8), (f)(1).
  test.each([
    ['potassiumMg', 94],
    ['calciumMg', 26],
    ['ironMg', 0.36],
    ['vitaminDMcg', 0.4],
    ['saturatedFatG', 0.5],
    ['transFatG', 0.5],
    ['cholesterolMg', 2],
    ['fiberG', 1],
    ['totalSugarsG', 1],
    ['addedSugarsG', 1],
    ['sodiumMg', 5],
  ] as const)('[LBL-7] of %s is an upper bound, %d', (nutrient, hi) => {
    expect(notSignificantRange(nutrient)).toEqual({ lo: 0, hi });
  });

  test.each([
    ['added sugars and trans fat', ['addedSugarsG', 'transFatG']],
    ['Not a significant source of saturated fat, trans fat, and/or cholesterol.', ['saturatedFatG', 'transFatG', 'cholesterolMg']],
    [
      'dietary fiber, total sugars, vitamin D, calcium, iron & potassium',
      ['fiberG', 'totalSugarsG', 'vitaminDMcg', 'calciumMg', 'ironMg', 'potassiumMg'],
    ],
    ['calories from fat, vitamin A and VITAMIN C', []],
    ['', []],
  ])('[LBL-7] "%s" names %j', (words, nutrients) => {
    expect(readNotSignificant(words)).toEqual({ value: nutrients, issues: [] });
  });

  test('[LBL-7] a name that is no nutrient is reported and left alone', () => {
    const { value, issues } = readNotSignificant('iron and unobtainium');
    expect(value).toEqual(['ironMg']);
    expect(issues.map(({ code, found }) => [code, found])).toEqual([['nutrient-not-known', 'unobtainium']]);
  });

  test('[LBL-7] ten megabytes are refused at once', () => {
    const words = 'iron and '.repeat(1_100_000);
    const { result, milliseconds } = computed(() => readNotSignificant(words));
    expect(result.value).toEqual([]);
    expect(milliseconds).toBeLessThan(1000);
  });
});
