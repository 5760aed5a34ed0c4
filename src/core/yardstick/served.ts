import type { Amounts } from '#core/label/label.ts';
import type { PlatePart } from '#core/plate/plate.ts';
import { portionFactor } from '#core/plate/portionFactor.ts';
import { type Amount, judgedRange, type Total, type UnknownAmount, type UnknownReason } from '#core/quantity/amount.ts';
import { add, type Interval, scale, zero } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';

/** One portion of one food, its factor already found. */
export interface Helping {
  readonly part: PlatePart;
  readonly factor: number | UnknownAmount;
}

/** What is judged: the surveyed food (two helpings when it is mixed with an unsalted version) and its companions. */
export interface Served {
  readonly surveyed: readonly Helping[];
  readonly companions: CompanionTotals;
}

/** The companions of one plate, summed once for all the foods that are surveyed on it. */
export interface CompanionTotals {
  readonly parts: readonly PlatePart[];
  readonly total: (nutrient: Nutrient, useEstimates: boolean) => Total;
}

export function helpingOf(part: PlatePart): Helping {
  return { part, factor: portionFactor(part.portion, part.food) };
}

export function companionTotals(parts: readonly PlatePart[]): CompanionTotals {
  const helpings = parts.map(helpingOf);
  const known = new Map<string, Total>();
  return {
    parts,
    total: (nutrient, useEstimates) => {
      const key = useEstimates ? `${nutrient} estimated` : nutrient;
      let total = known.get(key);
      if (total === undefined) {
        total = helpings.reduce((sum, helping) => addHelping(sum, helping, nutrient, useEstimates), nothing);
        known.set(key, total);
      }
      return total;
    },
  };
}

export const nothing: Total = { judged: zero, range: zero, estimated: false, missing: [] };

export function addHelping(sum: Total, { part, factor }: Helping, nutrient: Nutrient, useEstimates: boolean): Total {
  return addAmounts(sum, part.food.name, part.food.label.amounts, factor, nutrient, useEstimates);
}

/** Adds an amount as a test may use it: an estimate counts as unknown unless the test uses estimates, and then in its whole range. */
export function addAmounts(
  sum: Total,
  of: string,
  amounts: Amounts,
  factor: number | UnknownAmount,
  nutrient: Nutrient,
  useEstimates: boolean,
): Total {
  const amount = amounts[nutrient];
  const compared = comparedRange(amount, useEstimates);
  if (compared === undefined || amount.kind === 'unknown' || typeof factor !== 'number') {
    return { ...sum, missing: [...sum.missing, { of, reason: reasonOf(amount, factor) }] };
  }
  return {
    judged: add(sum.judged, scale(compared, factor)),
    range: add(sum.range, scale(amount.range, factor)),
    estimated: sum.estimated || amount.source === 'estimated',
    missing: sum.missing,
  };
}

/** What of an amount is compared: the printed number, else the whole range, of an estimate always; undefined when unknown or not to be used. */
export function comparedRange(amount: Amount, useEstimates: boolean): Interval | undefined {
  if (amount.kind === 'unknown') return undefined;
  if (amount.source !== 'estimated') return judgedRange(amount);
  return useEstimates ? amount.range : undefined;
}

function reasonOf(amount: Amount, factor: number | UnknownAmount): UnknownReason {
  if (amount.kind === 'unknown') return amount.reason;
  return typeof factor === 'number' ? 'not-printed' : factor.reason;
}
