import { describe, expect, test } from 'vitest';
import { judgedRange, type KnownAmount, knownExactly, scaleAmount, totalOf, unknown } from './amount.ts';
import {
  add,
  divide,
  exactly,
  hull,
  intersect,
  interval,
  intervalFromJson,
  intervalToJson,
  isOpenEnded,
  overlaps,
  scale,
  subtract,
  zero,
} from './interval.ts';
import { intervalSchema } from './intervalJson.ts';
import { nutrients } from './nutrients.ts';
import { ceilTo, cleanFloat, floorTo, nearest, roundHalfUp } from './rounding.ts';

const infinity = Number.POSITIVE_INFINITY;

describe('ranges', () => {
  test('a range has its ends the right way round', () => {
    expect(interval(1, 1)).toEqual({ lo: 1, hi: 1 });
    expect(exactly(3)).toEqual({ lo: 3, hi: 3 });
    for (const [lo, hi] of [
      [2, 1],
      [Number.NaN, 1],
      [1, Number.NaN],
    ] as const)
      expect(() => interval(lo, hi)).toThrow(RangeError);
  });

  test('[PLT-1] sums, differences, products and quotients hold every value that their parts can have', () => {
    expect(add(interval(1, 2), interval(5, 7))).toEqual({ lo: 6, hi: 9 });
    expect(subtract(interval(5, 6), interval(1, 2))).toEqual({ lo: 3, hi: 5 });
    expect(scale(interval(2, 3), 4)).toEqual({ lo: 8, hi: 12 });
    expect(scale(interval(2, 3), 0.5)).toEqual({ lo: 1, hi: 1.5 });
    expect(scale(interval(2, 3), -4)).toEqual({ lo: -12, hi: -8 });
    expect(scale(interval(2, infinity), 0)).toBe(zero);
    expect(divide(interval(6, 8), interval(2, 4))).toEqual({ lo: 1.5, hi: 4 });
    expect(divide(interval(6, 8), interval(0, 4))).toEqual({ lo: 1.5, hi: infinity });
    expect(divide(interval(6, 8), interval(2, infinity))).toEqual({ lo: 0, hi: 4 });
    expect(divide(interval(6, 8), zero)).toEqual({ lo: 0, hi: infinity });
  });

  test('what both allow, what holds both, whether they meet: at the ends they do', () => {
    expect(intersect(interval(1, 3), interval(2, 5))).toEqual({ lo: 2, hi: 3 });
    expect(intersect(interval(1, 3), interval(3, 5))).toEqual({ lo: 3, hi: 3 });
    expect(intersect(interval(1, 3), interval(3.1, 5))).toBeUndefined();
    expect(hull(interval(1, 3), interval(2, 5))).toEqual({ lo: 1, hi: 5 });
    expect(hull(interval(2, 5), interval(1, 3))).toEqual({ lo: 1, hi: 5 });
    expect(overlaps(interval(1, 3), interval(3, 5))).toBe(true);
    expect(overlaps(interval(3, 5), interval(1, 3))).toBe(true);
    expect(overlaps(interval(1, 3), interval(3.1, 5))).toBe(false);
    expect(overlaps(interval(3.1, 5), interval(1, 3))).toBe(false);
  });

  test('[CLT-50] an open end travels as null and comes back as no end', () => {
    expect(intervalToJson(interval(1, infinity))).toEqual([1, null]);
    expect(intervalToJson(interval(1, 2))).toEqual([1, 2]);
    expect(intervalFromJson([1, null])).toEqual({ lo: 1, hi: infinity });
    expect(intervalFromJson([0, 0])).toEqual({ lo: 0, hi: 0 });
    expect([isOpenEnded(interval(1, infinity)), isOpenEnded(interval(1, 2))]).toEqual([true, false]);
    for (const right of [
      [0, 0],
      [1, 2],
      [1, null],
    ])
      expect(intervalSchema.safeParse(right).success).toBe(true);
    for (const wrong of [[2, 1], [-1, 2], [1, -2], [1], 'x', null]) expect(intervalSchema.safeParse(wrong).success).toBe(false);
  });
});

describe('rounding', () => {
  // 21 CFR 101.9(c), (d)(8): ties go up; a figure a hair below a tie is the tie.
  test('[LBL-1] to the nearest step, ties up', () => {
    expect([7.4, 7.5, 142, 2.25].map(value => nearest(value, 5))).toEqual([5, 10, 140, 0]);
    expect(nearest(0.15, 0.1)).toBe(0.2);
    expect(nearest(1.005 * 100, 1)).toBe(101);
    expect(nearest(7.4999, 5)).toBe(5);
  });

  test('half up to decimals, away from nothing on either side', () => {
    expect(roundHalfUp(0.975, 2)).toBe(0.98);
    expect(roundHalfUp(1.005, 2)).toBe(1.01);
    expect(roundHalfUp(1.0049, 2)).toBe(1);
    expect(roundHalfUp(12.5, 0)).toBe(13);
    expect(roundHalfUp(-12.5, 0)).toBe(-13);
    expect(roundHalfUp(-0.4, 0)).toBeCloseTo(0);
    // Near a million a billionth of the figure is what binary leaves open.
    expect(roundHalfUp(1_000_000.498, 0)).toBe(1_000_000);
    expect(roundHalfUp(1_000_000.4999, 0)).toBe(1_000_001);
  });

  test('outward to decimals, binary dust left out', () => {
    expect([floorTo(1.29, 1), floorTo(-1.21, 1), floorTo(5, 1), floorTo(0.1 + 0.2, 1)]).toEqual([1.2, -1.3, 5, 0.3]);
    expect([ceilTo(1.21, 1), ceilTo(-1.29, 1), ceilTo(5, 1), ceilTo(0.1 + 0.2, 1)]).toEqual([1.3, -1.2, 5, 0.3]);
    expect([floorTo(1.239, 2), ceilTo(1.231, 2), floorTo(1.9, 0), ceilTo(1.1, 0)]).toEqual([1.23, 1.24, 1, 2]);
    expect([cleanFloat(0.1 + 0.2), cleanFloat(infinity)]).toEqual([0.3, infinity]);
  });
});

describe('amounts', () => {
  const printed: KnownAmount = { kind: 'known', printed: 140, range: interval(137.5, 145), source: 'printed' };
  const estimate: KnownAmount = { kind: 'known', likely: 80, range: interval(60, 100), source: 'estimated' };

  test('[PLT-1] half the portion is half of the figure, of the likely value and of the range', () => {
    expect(scaleAmount(printed, 0.5)).toEqual({ kind: 'known', printed: 70, range: { lo: 68.75, hi: 72.5 }, source: 'printed' });
    expect(scaleAmount(estimate, 2)).toEqual({ kind: 'known', likely: 160, range: { lo: 120, hi: 200 }, source: 'estimated' });
    expect(scaleAmount(estimate, 2)).not.toHaveProperty('printed');
    expect(scaleAmount(printed, 2)).not.toHaveProperty('likely');
    expect(scaleAmount(printed, 1)).toBe(printed);
    expect(scaleAmount(unknown('no-label'), 2)).toEqual({ kind: 'unknown', reason: 'no-label' });
  });

  test('[PLT-5] an unknown part is carried by name, an estimate is told, nothing at all is zero', () => {
    expect(judgedRange(printed)).toEqual({ lo: 140, hi: 140 });
    expect(judgedRange(estimate)).toEqual({ lo: 60, hi: 100 });
    expect(totalOf([])).toEqual({ judged: zero, range: zero, estimated: false, missing: [] });
    expect(
      totalOf([
        { of: 'Ham', amount: printed },
        { of: 'Bread', amount: knownExactly(10, 'reference') },
      ]),
    ).toEqual({
      judged: { lo: 150, hi: 150 },
      range: { lo: 147.5, hi: 155 },
      estimated: false,
      missing: [],
    });
    expect(
      totalOf([
        { of: 'Beans', amount: estimate },
        { of: 'Bread', amount: unknown('no-label') },
      ]),
    ).toEqual({
      judged: { lo: 60, hi: 100 },
      range: { lo: 60, hi: 100 },
      estimated: true,
      missing: [{ of: 'Bread', reason: 'no-label' }],
    });
  });
});

// 21 CFR 101.9(c)(8)(iv), (c)(9) as amended in 2016, and before (9 CFR 317.309, 381.409); phosphorus and magnesium from memory.
test.each([
  ['fatG', 78, 65],
  ['saturatedFatG', 20, 20],
  ['transFatG', null, null],
  ['cholesterolMg', 300, 300],
  ['sodiumMg', 2300, 2400],
  ['carbohydrateG', 275, 300],
  ['fiberG', 28, 25],
  ['totalSugarsG', null, null],
  ['addedSugarsG', 50, null],
  ['proteinG', 50, 50],
  ['vitaminDMcg', 20, 10],
  ['calciumMg', 1300, 1000],
  ['ironMg', 18, 18],
  ['potassiumMg', 4700, 3500],
  ['phosphorusMg', 1250, 1000],
  ['magnesiumMg', 420, 400],
] as const)('[LBL-2] the Daily Value of %s is %s, before 2016 %s', (nutrient, dailyValue, dailyValueBefore2016) => {
  expect(nutrients[nutrient]).toMatchObject({ dailyValue, dailyValueBefore2016 });
});
