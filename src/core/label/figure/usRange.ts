import { type Interval, interval } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import { twoPercentOfDailyValue, usPrintRule } from './usPrintRule.ts';

/**
 * The true amounts per serving that a US panel may print as this number: the inverse of 21 CFR 101.9(c), as wide as the
 * wording permits, closed outward. 140 mg of sodium stands for 137.5 up to 145 mg, 2.5 g of fat for 2.25 up to 2.75 g,
 * 0 mg of potassium for 0 up to 94 mg (under 2 % of the Daily Value may print as zero). A number that no US rounding
 * gives (145 mg of sodium) is taken to be as coarse as its neighbors.
 *
 * @param place worth of the last printed digit; it decides for vitamins and minerals, which the law gives no step.
 */
export function usRange(nutrient: Nutrient, value: number, place: number): Interval {
  switch (usPrintRule[nutrient]) {
    case 'energy':
      if (value === 0) return interval(0, 5);
      if (value === 50) return interval(47.5, 55);
      return around(value, value < 50 ? 2.5 : 5);
    case 'fat':
      if (value === 0) return interval(0, 0.5);
      if (value === 0.5) return interval(0.5, 0.75);
      if (value === 5) return interval(4.75, 5.5);
      return around(value, value < 5 ? 0.25 : 0.5);
    case 'cholesterol':
      return around(value, 2.5);
    case 'sodium':
      return sodiumRange(value);
    case 'gram':
      return around(value, Math.max(0.5, place / 2));
    case 'ten':
      if (value === 0) return zeroMineral(nutrient);
      return around(value, value % 10 === 0 ? 5 : place / 2);
    case 'tenth':
      return value === 0 ? zeroMineral(nutrient) : around(value, place / 2);
    case 'none':
      return around(value, place / 2);
  }
}

/** 21 CFR 101.9(c)(4): by 5 up to 140, by 10 above. Potassium went by it until 2016. */
export function sodiumRange(value: number): Interval {
  if (value === 0) return interval(0, 5);
  if (value === 5) return interval(5, 7.5);
  if (value === 140) return interval(137.5, 145);
  return around(value, value < 140 ? 2.5 : 5);
}

/** 21 CFR 101.9(c)(8)(iii): a vitamin or mineral under 2 % of its Daily Value may print as zero. */
function zeroMineral(nutrient: Nutrient): Interval {
  return interval(0, twoPercentOfDailyValue(nutrient));
}

/** Half a step on either side, not below nothing, free of binary dust. The value itself is always inside. */
export function around(value: number, half: number): Interval {
  const lo = Math.max(0, value - half);
  const hi = value + half;
  if (Number.isInteger(value * 4) && Number.isInteger(half * 4)) return interval(lo, hi);
  return interval(Math.min(value, cleanFloat(lo)), Math.max(value, cleanFloat(hi)));
}
