import type { Interval } from '#core/quantity/interval.ts';
import { ceilTo, floorTo } from '#core/quantity/rounding.ts';
import type { Limit, TargetItem, TargetUnit } from './target.ts';

export const targetNames: Readonly<Record<TargetItem, string>> = {
  energy: 'Energy',
  protein: 'Protein',
  sodium: 'Sodium',
  potassium: 'Potassium',
  phosphorus: 'Phosphorus',
  calcium: 'Calcium',
  fluid: 'Fluid',
  fiber: 'Fiber',
  phosphateAdditives: 'Phosphate additives',
  potassiumAdditives: 'Potassium additives',
};

/** A target that has no figure reads so. */
export const noLimitWords = 'no limit set';

/**
 * A day's range as it is read, rounded outward to tenths: "38.5 – 42 g", "56 g", "under 2300 mg", "at most 1300 mL", "at least 77 g",
 * "none named on the label". Without a range: "no limit set", for a target held back is not one that nobody needs.
 */
export function rangeWords(unit: TargetUnit, range: Interval | undefined, limit: Limit = 'within'): string {
  if (range === undefined) return noLimitWords;
  if (unit === 'named on the label') return range.hi === 0 ? 'none named on the label' : `at most ${range.hi} named on the label`;
  const lo = floorTo(range.lo, 1);
  const hi = ceilTo(range.hi, 1);
  if (hi === Number.POSITIVE_INFINITY) return lo === 0 ? noLimitWords : `at least ${lo} ${unit}`;
  if (lo > 0 && lo < hi) return `${lo} – ${hi} ${unit}`;
  if (limit === 'below') return `under ${hi} ${unit}`;
  if (limit === 'at-most' || lo < hi) return `at most ${hi} ${unit}`;
  return limit === 'at-least' ? `at least ${lo} ${unit}` : `${lo} ${unit}`;
}
