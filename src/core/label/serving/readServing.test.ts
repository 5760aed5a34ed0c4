import { describe, expect, test } from 'vitest';
import type { Market, PrintedServing } from '../label.ts';
import { readServing } from './readServing.ts';

const third = 1 / 3;

describe('household measures', () => {
  // Common prints; steps of cups and spoons are 21 CFR 101.9(b)(5)(i).
  test.each([
    ['4 slices (56 g)', 4, 'slice', 56],
    ['4 slices', 4, 'slice', undefined],
    ['1/2 cup', 0.5, 'cup', undefined],
    ['½ cup (120 g)', 0.5, 'cup', 120],
    ['1½ cups', 1.5, 'cup', undefined],
    ['1 1/3 Tbsp', 1 + third, 'tablespoon', undefined],
    ['2 Tbsp. (32g)', 2, 'tablespoon', 32],
    ['1/4 tsp (0.5 g)', 0.25, 'teaspoon', 0.5],
    ['about 15 chips', 15, 'chip', undefined],
    ['2 oz (56g/about 1/2 cup dry)', 2, 'ounce', 56],
    ['2/3 cup cereal (55 g)', 2 / 3, 'cup', 55],
    ['56 g (about 4 thin slices)', 4, 'slice', 56],
    ['Serving size: 3 cookies (34 g)', 3, 'cookie', 34],
    ['1 package (8 oz) (226g)', 1, 'package', 226],
    ['1/4 of a pizza (140 g)', 0.25, 'pizza', 140],
    ['2 slices of bread (64 g)', 2, 'slice', 64],
    ['8 mini pretzels (28 g)', 8, 'mini pretzel', 28],
    ['2 patties (90 g)', 2, 'patty', 90],
    ['6 radishes (85 g)', 6, 'radish', 85],
  ])('[LBL-11] "%s" is %d of "%s"', (household, count, measure, grams) => {
    const { issues, ...read } = readServing({ household }, 'us');
    expect(read.household).toEqual({ count: expect.closeTo(count, 12), measure });
    expect(read.grams?.printed).toBe(grams);
    expect(issues).toEqual([]);
  });

  test('[LBL-11] milliliters and fluid ounces', () => {
    expect(readServing({ household: '8 fl. oz (240 mL)' }, 'us')).toMatchObject({
      household: { count: 8, measure: 'fluid ounce' },
      milliliters: { printed: 240, range: { lo: 239.5, hi: 240.5 } },
    });
    expect(readServing({ household: '1 glass (0,2 l)' }, 'eu')).toMatchObject({ milliliters: { printed: 200 } });
  });

  test('[LBL-11] a sum of measures is more than a count and a name, so it is not taken for one', () => {
    expect(readServing({ household: '1 cup + 2 tbsp (260 g)' }, 'us').household).toBeUndefined();
  });
});

describe('grams of a serving', () => {
  // 21 CFR 101.9(b)(7)(ii): whole grams; halves from 2 to 5; tenths below 2.
  test.each([
    [56, 55.5, 56.5],
    [5, 4.75, 5.5],
    [4.5, 4.25, 4.75],
    [2, 1.95, 2.25],
    [1.5, 1.45, 1.55],
    [0.3, 0.25, 0.35],
    [28.35, 28.345, 28.355],
  ])('[LBL-11] %d g stands for %d to %d g', (grams, lo, hi) => {
    const { range } = readServing({ grams }, 'us').grams!;
    expect(range.lo).toBeCloseTo(lo, 9);
    expect(range.hi).toBeCloseTo(hi, 9);
  });

  test('[LBL-11] grams in their own field stand, and an issue says when the household words differ', () => {
    const read = readServing({ household: '4 slices (56 g)', grams: '65 g' }, 'us');
    expect(read.grams?.printed).toBe(65);
    expect(read.issues.map(({ code, place }) => [code, place.heading])).toEqual([['serving-disagrees', 'serving.household']]);
  });

  test.each<[PrintedServing, Market]>([
    [{ grams: Number.NaN }, 'us'],
    [{ grams: 0 }, 'us'],
    [{ grams: -3 }, 'us'],
    [{ grams: 1e308 }, 'us'],
    [{ grams: '2 oz' }, 'us'],
    [{ grams: '=A1' }, 'us'],
    [{ grams: '9'.repeat(10_000_000) }, 'us'],
    [{ grams: '1,200 g' }, 'eu'],
    [{ household: 'a pinch' }, 'us'],
    [{ household: '('.repeat(10_000_000) }, 'us'],
    [{ perContainer: 'many' }, 'us'],
    [{ perContainer: 0 }, 'us'],
  ])('[LBL-11] a serving that cannot be read is left out, with an issue', (serving, market) => {
    const { issues, ...read } = readServing(serving, market);
    expect(read).toEqual({});
    expect(issues.map(({ code }) => code)).toEqual(['serving-not-readable']);
  });

  // 21 CFR 101.9(b)(8)(i), (iii).
  test('[LBL-11] servings per container are rounded too, and "varied" is no fault', () => {
    expect(readServing({ perContainer: 'about 3.5' }, 'us').perContainer?.range).toEqual({ lo: 3.25, hi: 3.75 });
    expect(readServing({ perContainer: 8 }, 'us').perContainer?.range).toEqual({ lo: 7.5, hi: 8.5 });
    expect(readServing({ perContainer: 'varied' }, 'us')).toEqual({ issues: [] });
  });
});
