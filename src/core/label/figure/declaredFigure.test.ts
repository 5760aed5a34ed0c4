import { describe, expect, test } from 'vitest';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { usDeclaredDailyValuePercent, usDeclaredFigure } from './declaredFigure.ts';

describe('what a US panel prints', () => {
  // 21 CFR 101.9(c)(1)-(7), eCFR text after the 2016 rule; the fourth column is the paragraph.
  const rows: readonly (readonly [Nutrient, number, number | string, string])[] = [
    ['sodiumMg', 4.99, 0, '(c)(4)'],
    ['sodiumMg', 7.4, 5, '(c)(4)'],
    ['sodiumMg', 7.5, 10, '(c)(4)'],
    ['sodiumMg', 137.4, 135, '(c)(4)'],
    ['sodiumMg', 137.5, 140, '(c)(4)'],
    ['sodiumMg', 142, 140, '(c)(4)'],
    ['sodiumMg', 145, 150, '(c)(4)'],
    ['sodiumMg', 163, 160, '(c)(4)'],
    ['fatG', 0.49, 0, '(c)(2)'],
    ['fatG', 0.5, 0.5, '(c)(2)'],
    ['fatG', 2.24, 2, '(c)(2)'],
    ['fatG', 2.25, 2.5, '(c)(2)'],
    ['saturatedFatG', 4.75, 5, '(c)(2)(i)'],
    ['fatG', 5.49, 5, '(c)(2)'],
    ['fatG', 5.5, 6, '(c)(2)'],
    ['energyKcal', 4.9, 0, '(c)(1)'],
    ['energyKcal', 7.4, 5, '(c)(1)'],
    ['energyKcal', 47.5, 50, '(c)(1)'],
    ['energyKcal', 52, 50, '(c)(1)'],
    ['energyKcal', 55, 60, '(c)(1)'],
    ['energyKcal', 88, 90, '(c)(1)'],
    ['cholesterolMg', 1.9, 0, '(c)(3)'],
    ['cholesterolMg', 3, 'less than 5 mg', '(c)(3)'],
    ['cholesterolMg', 12, 10, '(c)(3)'],
    ['cholesterolMg', 13, 15, '(c)(3)'],
    ['fiberG', 0.4, 0, '(c)(6)(i)'],
    ['fiberG', 0.7, 'less than 1 g', '(c)(6)(i)'],
    ['fiberG', 1.49, 1, '(c)(6)(i)'],
    ['proteinG', 1.5, 2, '(c)(7)'],
  ];
  test.each(rows)('[LBL-1] %s %d prints as %s, 21 CFR 101.9%s', (nutrient, amount, printed) => {
    expect(usDeclaredFigure(nutrient, amount)).toBe(printed);
  });

  test('[LBL-1] vitamins and minerals go by the increments of FDA guidance (10 mg from memory)', () => {
    expect(usDeclaredFigure('potassiumMg', 364)).toBe(360);
    expect(usDeclaredFigure('ironMg', 1.26)).toBe(1.3);
    expect(usDeclaredFigure('vitaminDMcg', 0.3)).toBe(0.3);
  });

  test('[LBL-1] an amount that no food can have is a programming mistake', () => {
    for (const amount of [Number.NaN, -1, Number.POSITIVE_INFINITY]) expect(() => usDeclaredFigure('sodiumMg', amount)).toThrow(RangeError);
  });
});

describe('the %DV a US panel prints', () => {
  // 21 CFR 101.9(d)(8): the sample label prints potassium 235 mg as 6 %, iron 8 mg as 45 %, calcium 260 mg as 20 %.
  test.each([
    ['potassiumMg', 235, 6],
    ['ironMg', 8, 45],
    ['calciumMg', 260, 20],
  ] as const)('[LBL-2] %s %d is %d %%, as on the sample label of 101.9(d)(8)', (nutrient, amount, percent) => {
    expect(usDeclaredDailyValuePercent(nutrient, amount)).toBe(percent);
  });

  // 21 CFR 101.9(c)(8)(iii): under 2 % is 0; to 10 % by 2; to 50 % by 5; above by 10.
  test.each([
    [1.99, 0],
    [2, 2],
    [8.99, 8],
    [9, 10],
    [12.49, 10],
    [12.5, 15],
    [54.9, 50],
    [55, 60],
  ])('[LBL-2] a mineral at %d %% of its Daily Value prints as %d %%', (raw, percent) => {
    expect(usDeclaredDailyValuePercent('potassiumMg', raw * 47)).toBe(percent);
  });

  test('[LBL-2] sodium goes to the nearest 1 % of 2300 mg (101.9(d)(7)(ii), (c)(9))', () => {
    expect(usDeclaredDailyValuePercent('sodiumMg', 140)).toBe(6);
  });

  test('[LBL-2] trans fat and total sugars have no Daily Value', () => {
    expect(usDeclaredDailyValuePercent('transFatG', 1)).toBeUndefined();
    expect(usDeclaredDailyValuePercent('totalSugarsG', 20)).toBeUndefined();
  });
});
