import type { DecidedTarget } from '#core/client/record/record.ts';
import { type Interval, isOpenEnded } from '#core/quantity/interval.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';
import { householdFluid } from './householdFluid.ts';
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

/** What stands for a figure where there is none. A target held back is not one that nobody needs, and a record of form 1 does not tell which. */
const noLimitWords = 'no limit set';
const withheldWords = 'no figure set: to be checked';
const notToldWords = 'no figure set';

/** A target as signed: "38.5 – 42 g", "at most 1000 mL (4 cups, 33 fl oz)", "no limit set", "no figure set: to be checked". */
export function decidedWords({
  item,
  unit,
  kind,
  range,
  limit,
}: Pick<DecidedTarget, 'item' | 'unit' | 'kind' | 'range' | 'limit'>): string {
  if (range === undefined) return kind === 'no-limit' ? noLimitWords : kind === 'withheld' ? withheldWords : notToldWords;
  return rangeWords(unit, range, limit) + (item === 'fluid' ? householdWords(range, limit) : '');
}

/** " (4 cups, 33 fl oz)" after an amount of fluid. */
export function householdWords(range: Interval, limit: Limit = 'within'): string {
  const measures = householdFluid(range, limit);
  return measures === undefined ? '' : ` (${measures.cups} ${measures.isOneCup ? 'cup' : 'cups'}, ${measures.ounces} fl oz)`;
}

/**
 * A day's range as it is read: "38.5 – 42 g", "56 g", "under 2300 mg", "at most 1300 mL", "at least 77 g", "none named on the label".
 * Grams to tenths, everything else whole; the ends of a range go outward, a most down and a least up, so that neither ever says more room than was signed.
 */
export function rangeWords(unit: TargetUnit, range: Interval, limit: Limit = 'within'): string {
  const { lo, hi } = range;
  if (unit === 'named on the label') {
    return hi === 0 ? 'none named on the label' : isOpenEnded(range) ? noLimitWords : `at most ${hi} named on the label`;
  }
  const decimals = unit === 'g' ? 1 : 0;
  if (isOpenEnded(range)) return lo === 0 ? noLimitWords : `at least ${ceilTo(lo, decimals)} ${unit}`;
  if (limit === 'at-least') return `at least ${ceilTo(lo, decimals)} ${unit}`;
  if (lo > 0 && lo < hi) return `${floorTo(lo, decimals)} – ${ceilTo(hi, decimals)} ${unit}`;
  if (limit === 'below') return `under ${floorTo(hi, decimals)} ${unit}`;
  if (limit === 'at-most' || lo < hi) return `at most ${floorTo(hi, decimals)} ${unit}`;
  return `${roundHalfUp(lo, decimals)} ${unit}`;
}

/** A figure per kg: "25 – 35", "at least 1.2". An end that is open is never a figure. */
export function perKgWords({ lo, hi }: Interval, limit: Limit): string {
  if (hi === Number.POSITIVE_INFINITY || limit === 'at-least') return `at least ${ceilTo(lo, 2)}`;
  if (limit === 'below') return `under ${floorTo(hi, 2)}`;
  if (limit === 'at-most') return `at most ${floorTo(hi, 2)}`;
  const [low, high] = [roundHalfUp(lo, 2), roundHalfUp(hi, 2)];
  return low === high ? String(low) : `${low} – ${high}`;
}
