import type { Total } from '#core/quantity/amount.ts';
import { add, type Interval, scale, subtract } from '#core/quantity/interval.ts';
import type { MeasureFacts, MeasureValue, Term, Totals } from './numberKind.ts';

type SumFacts = Pick<MeasureFacts<never>, 'value' | 'linear' | 'shownTerms' | 'isProportion' | 'tellsBound'>;

/**
 * What follows from a value being a sum: sodium mg − energy kcal has the terms sodium and, taken off, energy. The first term
 * is counted. What is known of one counted nutrient is a part of the sum; without anything of what is taken off nothing is known.
 */
export function weightedSum(terms: readonly [Term, ...Term[]]): SumFacts {
  const takesOff = terms.some(({ isTakenOff }) => isTakenOff);
  return {
    value: (totals, foods) => sumOf(terms, totals, foods),
    linear: figure => ({ terms, limit: figure }),
    shownTerms: terms,
    // Sodium no more than energy holds for half of a food as for the whole; at most 140 mg does not.
    isProportion: figure => takesOff && figure === 0,
    tellsBound: () => false,
  };
}

function sumOf(terms: readonly Term[], totals: Totals, foods: number): MeasureValue {
  let isFloor = true;
  let isCountedKnown = false;
  let judged: Interval | undefined;
  let range: Interval | undefined;
  for (let at = 0; at < terms.length; at++) {
    const { weight, isTakenOff } = terms[at]!;
    const total = totals[at]!;
    const isKnown = total.missing.length < foods;
    if (isTakenOff && !isKnown) return { isFloor: false };
    if (isTakenOff && total.missing.length > 0) isFloor = false;
    if (!isTakenOff && isKnown) isCountedKnown = true;
    judged = joined(judged, weighted(total.judged, weight), isTakenOff);
    range = joined(range, weighted(total.range, weight), isTakenOff);
  }
  if (!isCountedKnown || judged === undefined || range === undefined) return { isFloor };
  return { judged, range, isFloor };
}

function weighted(amount: Interval, weight: number): Interval {
  return weight === 1 ? amount : scale(amount, weight);
}

function joined(sum: Interval | undefined, amount: Interval, isTakenOff: boolean): Interval {
  if (sum === undefined) return amount;
  return isTakenOff ? subtract(sum, amount) : add(sum, amount);
}

/** Whether nothing at all is known of a total. */
export function isUnknown({ missing }: Total, foods: number): boolean {
  return missing.length === foods;
}
