import type { MissingPart, Total } from '#core/quantity/amount.ts';
import { divide, type Interval, scale, subtract } from '#core/quantity/interval.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import type { OnBasis } from './basis.ts';
import type { Measure } from './yardstick.ts';

/** A measure that is a number, unlike the presence of an additive. */
export type NumberMeasure = Exclude<Measure, { readonly kind: 'additive' | 'ingredient' }>;

/** The value of a measure over what is known. */
export interface Measured {
  /** The totals it was made of: one, or two for a difference or ratio. */
  readonly totals: readonly [Total] | readonly [Total, Total];
  /** What is compared; absent when nothing is known, and for a ratio to zero, which is not defined. */
  readonly judged?: Interval;
  /** What rounding allows. */
  readonly range?: Interval;
  readonly notDefined: boolean;
  readonly missing: readonly (MissingPart & { readonly nutrient: Nutrient })[];
  /** With parts missing: whether the true value is at least `judged`, because nothing is missing from what is taken off or divided by. */
  readonly isFloor: boolean;
  readonly estimated: boolean;
}

/** The nutrients a measure needs, in the order of its totals. */
export function nutrientsOf(measure: NumberMeasure): readonly [Nutrient] | readonly [Nutrient, Nutrient] {
  if (measure.kind === 'difference') return [measure.nutrient, measure.minus];
  if (measure.kind === 'ratio') return [measure.nutrient, measure.per];
  return [measure.nutrient];
}

/** sodiumMg − energyKcal over 340 mg and 350 kcal: −10. 40 mg phosphorus to 0 g protein: not defined. */
export function measure(what: NumberMeasure, on: OnBasis, useEstimates: boolean): Measured {
  const first = on.total(what.nutrient, useEstimates);
  if (what.kind === 'nutrient' || what.kind === 'daily-value-percent') {
    const percent = what.kind === 'nutrient' ? 1 : percentPerUnit(what.nutrient);
    const missing = missingFrom(first, what.nutrient);
    const common = { totals: [first] as const, missing, isFloor: true, estimated: first.estimated };
    if (percent === undefined) return { ...common, notDefined: true };
    if (missing.length === on.foods) return { ...common, notDefined: false };
    return { ...common, notDefined: false, judged: scale(first.judged, percent), range: scale(first.range, percent) };
  }
  const otherNutrient = what.kind === 'difference' ? what.minus : what.per;
  const other = on.total(otherNutrient, useEstimates);
  const common = {
    totals: [first, other] as const,
    missing: [...missingFrom(first, what.nutrient), ...missingFrom(other, otherNutrient)],
    isFloor: other.missing.length === 0,
    estimated: first.estimated || other.estimated,
  };
  if (first.missing.length === on.foods || other.missing.length === on.foods) return { ...common, notDefined: false };
  if (what.kind === 'difference') {
    return { ...common, notDefined: false, judged: subtract(first.judged, other.judged), range: subtract(first.range, other.range) };
  }
  if (other.judged.hi === 0) return { ...common, notDefined: other.missing.length === 0 };
  return { ...common, notDefined: false, judged: divide(first.judged, other.judged), range: divide(first.range, other.range) };
}

/** Percent of the Daily Value in one unit of a nutrient; undefined for a nutrient that has no Daily Value. */
export function percentPerUnit(nutrient: Nutrient): number | undefined {
  const { dailyValue } = nutrients[nutrient];
  return dailyValue === null ? undefined : 100 / dailyValue;
}

const none: readonly never[] = [];

function missingFrom(total: Total, nutrient: Nutrient): readonly (MissingPart & { readonly nutrient: Nutrient })[] {
  return total.missing.length === 0 ? none : total.missing.map(part => ({ ...part, nutrient }));
}
