import { hull, type Interval, interval } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { usPrintRule } from './usPrintRule.ts';
import { around, sodiumRange, usRange } from './usRange.ts';

/**
 * The true amounts that a Canadian panel may print as this number. Its rounding bands are from memory (Food and Drug
 * Regulations, tables to B.01.401): macronutrients and sodium as in the US, minerals by 10, 25 and 50 mg, finer figures
 * where amounts are small. 360 mg of potassium is off those bands, so an older panel in steps of 10: 355 up to 365 mg.
 */
export function caRange(nutrient: Nutrient, value: number, place: number): Interval {
  switch (usPrintRule[nutrient]) {
    case 'ten':
      return mineralRange(value, place);
    case 'tenth':
      return value === 0 ? interval(0, 0.05) : around(value, ironHalf(value, place));
    case 'none':
      return around(value, place / 2);
    default:
      return place < 0.5 && value > 0 && value < 0.5 ? around(value, place / 2) : usRange(nutrient, value, place);
  }
}

function mineralRange(value: number, place: number): Interval {
  if (value === 0) return interval(0, 5);
  if (value === 50) return interval(45, 62.5);
  if (value === 250) return interval(237.5, 275);
  if (value < 50) return value % 10 === 0 ? around(value, 5) : around(value, Math.max(2.5, place / 2));
  if (value < 250 && value % 25 === 0) return around(value, 12.5);
  if (value > 250 && value % 50 === 0) return around(value, 25);
  return hull(sodiumRange(value), around(value, place / 2));
}

/** Iron by 0.25 from 0.5 to 2.5 mg and by 0.5 above; vitamin D is printed in the same places. */
function ironHalf(value: number, place: number): number {
  if (value >= 2.5 && value % 0.5 === 0) return Math.max(0.25, place / 2);
  if (value >= 0.5 && value < 2.5 && value % 0.25 === 0) return Math.max(0.125, place / 2);
  return place / 2;
}
