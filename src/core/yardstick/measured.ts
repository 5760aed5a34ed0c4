import type { MissingPart, Total } from '#core/quantity/amount.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import type { OnBasis } from './basis.ts';
import type { NumberMeasure } from './measures/measureKinds.ts';
import type { MeasureFacts, MeasureValue, Totals } from './measures/numberKind.ts';

/** The value of a measure on one basis. */
export interface Measured extends MeasureValue {
  /** The totals it was made of, one a nutrient. */
  readonly totals: Totals;
  readonly missing: readonly MissingNutrient[];
  readonly estimated: boolean;
}

type MissingNutrient = MissingPart & { readonly nutrient: Nutrient };

/** sodiumMg − energyKcal over 340 mg and 350 kcal: −10. 40 mg phosphorus to 0 g protein: not defined. */
export function measure(facts: MeasureFacts<NumberMeasure>, on: OnBasis, useEstimates: boolean): Measured {
  const [first, second] = facts.nutrients;
  const total = on.total(first, useEstimates);
  const missing = missingFrom(total, first);
  if (second === undefined) return measured(facts, on, [total], missing, total.estimated);
  const other = on.total(second, useEstimates);
  const all = other.missing.length === 0 ? missing : [...missing, ...missingFrom(other, second)];
  return measured(facts, on, [total, other], all, total.estimated || other.estimated);
}

// Written out and not spread: a survey comes here a million times.
function measured(
  facts: MeasureFacts<NumberMeasure>,
  on: OnBasis,
  totals: Totals,
  missing: readonly MissingNutrient[],
  estimated: boolean,
): Measured {
  const value = facts.value(totals, on.foods);
  const { judged, range, isFloor } = value;
  if (judged === undefined || range === undefined) return { ...value, totals, missing, estimated };
  return { totals, missing, estimated, judged, range, isFloor };
}

const none: readonly never[] = [];

function missingFrom(total: Total, nutrient: Nutrient): readonly MissingNutrient[] {
  return total.missing.length === 0 ? none : total.missing.map(part => ({ ...part, nutrient }));
}
