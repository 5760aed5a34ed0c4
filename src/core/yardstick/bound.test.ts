import { describe, expect, test } from 'vitest';
import { keeps, marginOf, withoutDust } from './bound.ts';
import { amountText, bareRange, decimalsOf, marginRangeText, marginText, rangeText } from './figureText.ts';
import { keepLimits, type LinearRule, sharesThatFit } from './linearTest.ts';

const upTo = (figure: number) => ({ kind: 'atMost', figure }) as const;

describe('a bound', () => {
  test.each([
    ['atMost', 139.9, true],
    ['atMost', 140, true],
    ['atMost', 140.1, false],
    ['below', 139.9, true],
    ['below', 140, false],
    ['atLeast', 140, true],
    ['atLeast', 139.9, false],
    ['atLeast', 140.1, true],
  ] as const)('[YST-8] %s 140 mg and %d mg: %s', (kind, value, kept) => {
    expect(keeps({ kind, figure: 140 }, value)).toBe(kept);
  });

  test('[YST-8] "<5 mg" is under 5 mg: an excluded end may touch a strict bound, and no more', () => {
    expect(keeps({ kind: 'below', figure: 5 }, 5, true)).toBe(true);
    expect(keeps({ kind: 'below', figure: 5 }, 5.1, true)).toBe(false);
  });

  test('the dust of sums is none: three thirds of 140 mg are 140 mg, a millionth more is more', () => {
    expect(marginOf(upTo(0.3), 0.1 + 0.2)).toBe(0);
    expect(marginOf(upTo(140), 140 + 1e-7)).toBe(0);
    expect(marginOf(upTo(140), 140.000001)).toBe(-0.000001);
    expect(marginOf(upTo(0), 1e-9)).toBe(0);
    expect(marginOf(upTo(0), 2e-9)).toBe(-2e-9);
    expect(marginOf({ kind: 'atLeast', figure: 8 }, 7.5)).toBe(-0.5);
    expect([0.1 + 0.2, -0.1 - 0.2, 3, 2_000_000.123456789].map(withoutDust)).toEqual([0.3, -0.3, 3, 2_000_000.123456789]);
    expect(withoutDust(Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('figures in words', () => {
  test('[YST-9] whole kcal and mg, tenths of a gram; ranges outward', () => {
    expect((['sodiumMg', 'energyKcal', 'proteinG'] as const).map(decimalsOf)).toEqual([0, 0, 1]);
    expect(amountText('energyKcal', { lo: 240, hi: 240 }, 0)).toBe('240 kcal');
    expect(amountText('potassiumMg', { lo: 94.6, hi: 140.2 }, 0)).toBe('94 – 141 mg potassium');
    expect(rangeText({ lo: 95.4, hi: Number.POSITIVE_INFINITY }, 'mg', 0)).toBe('at least 95 mg');
    expect(rangeText({ lo: 33.4, hi: 33.4 }, '%', 0)).toBe('33%');
    expect(
      [
        { lo: 350.5, hi: 350.5 },
        { lo: 19.2, hi: 79.1 },
        { lo: 95, hi: Number.POSITIVE_INFINITY },
      ].map(one => bareRange(one, 0)),
    ).toEqual(['351', '19–80', '95 or more']);
  });

  test.each([
    [5, true, false, 0, '5 mg to spare'],
    [-10, false, false, 0, '10 mg over'],
    [-2, false, true, 0, '2 mg short'],
    [0, true, false, 0, '0 mg to spare'],
    [0, false, false, 0, 'at the bound'],
    [-0.4, false, false, 0, 'less than 1 mg over'],
    [-0.5, false, false, 0, '1 mg over'],
    [-0.04, false, false, 1, 'less than 0.1 mg over'],
    [-0.05, false, false, 1, '0.1 mg over'],
  ])('[YST-9] a margin of %d (kept: %s, minimum: %s), %d decimals: %s', (margin, isKept, isMinimum, decimals, words) => {
    expect(marginText(margin, isKept, isMinimum, 'mg', decimals)).toBe(words);
  });

  test.each([
    [-7.5, 20, false, 0, '20 mg to spare … 7.5 mg over'],
    [-13.75, 2.3, false, 0, '2.5 mg to spare … 14 mg over'],
    [-3, 0, true, 0, '0 mg to spare … 3 mg short'],
    [-1.16, 1.05, false, 1, '1.1 mg to spare … 1.2 mg over'],
    [Number.NEGATIVE_INFINITY, 4, false, 0, '4 mg to spare … no known limit'],
  ])('[YST-2] from %d to %d (minimum: %s), %d decimals: %s', (lo, hi, isMinimum, decimals, words) => {
    expect(marginRangeText({ lo, hi }, isMinimum, 'mg', decimals)).toBe(words);
  });
});

describe('shares of a portion by linear rules', () => {
  const rule = (fixed: number, variable: number, limit: number): LinearRule => ({ fixed, variable, limit });

  // fixed + variable × share ≤ limit.
  test.each<[string, readonly LinearRule[], { least: number; most: number } | undefined]>([
    ['200 mg a portion, 100 mg allowed', [rule(0, 200, 100)], { least: 0, most: 0.5 }],
    ['50 mg beside it', [rule(50, 200, 100)], { least: 0, most: 0.25 }],
    ['two rules, the narrower one', [rule(0, 200, 100), rule(0, 100, 20)], { least: 0, most: 0.2 }],
    ['never above the most', [rule(0, 10, 100)], { least: 0, most: 2 }],
    ['a minimum asks for at least so much', [rule(0, -200, -100)], { least: 0.5, most: 2 }],
    ['two minimums, the greater one', [rule(0, -200, -100), rule(0, -200, -300)], { least: 1.5, most: 2 }],
    ['from one to the same', [rule(0, 100, 50), rule(0, -100, -50)], { least: 0.5, most: 0.5 }],
    ['a gap between them', [rule(0, 100, 40), rule(0, -100, -50)], undefined],
    ['over without any of it', [rule(150, 200, 100)], undefined],
    ['what does not change and just keeps', [rule(100, 0, 100)], { least: 0, most: 2 }],
    ['what does not change and does not', [rule(100.5, 0, 100)], undefined],
    ['not known', [rule(0, Number.NaN, 100)], undefined],
    ['not known beside it', [rule(Number.NaN, 200, 100)], undefined],
    ['no rule', [], { least: 0, most: 2 }],
  ])('[YST-31] %s', (_, rules, shares) => {
    expect(sharesThatFit(rules, 2)).toEqual(shares);
  });

  test('[YST-31] every limit has to be kept, dust aside, and what is not known keeps none', () => {
    const limits = (...all: number[]) => all.map(limit => ({ limit, seesCompanions: true, loadOf: () => 0 }));
    expect(keepLimits(limits(100, 0), [60, -20], [40, 10])).toBe(true);
    expect(keepLimits(limits(100, 0), [60, -20], [40.001, 10])).toBe(false);
    expect(keepLimits(limits(100, 0), [60, -5], [40, 10])).toBe(false);
    expect(keepLimits(limits(1e9), [1e9], [0.5])).toBe(true);
    expect(keepLimits(limits(1e9), [1e9], [2])).toBe(false);
    expect(keepLimits(limits(100), [Number.NaN], [0])).toBe(false);
  });
});
