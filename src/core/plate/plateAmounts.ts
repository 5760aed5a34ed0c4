import { recordOf } from '#core/json/recordOf.ts';
import { type Amount, scaleAmount, type Total, totalOf, type UnknownAmount } from '#core/quantity/amount.ts';
import { type Nutrient, nutrientKeys } from '#core/quantity/nutrients.ts';
import type { Plate, PlateFood, PlatePart, PlateTotals } from './plate.ts';
import { portionFactor } from './portionFactor.ts';

/** An amount of the label, in a portion that is `factor` times what the label's amounts are for. */
export function portionedAmount(amount: Amount, factor: number | UnknownAmount): Amount {
  return typeof factor === 'number' ? scaleAmount(amount, factor) : factor;
}

/** The total of one nutrient over portions eaten together. */
export function plateTotal(parts: readonly PlatePart[], nutrient: Nutrient): Total {
  return totalOf(
    parts.map(({ food, portion }) => ({
      of: food.name,
      amount: portionedAmount(food.label.amounts[nutrient], portionFactor(portion, food)),
    })),
  );
}

/**
 * The totals of all nutrients over portions eaten together, linear in each portion at the declared serving
 * (21 CFR 101.9(g)(7)). 150 mg sodium in a serving beside a companion of 0 mg: 150 mg. A part whose amount or
 * portion is unknown is carried by the food's name in `missing` and never counted as zero.
 *
 * @internal
 */
export function plateAmounts(parts: readonly PlatePart[]): PlateTotals {
  return recordOf(nutrientKeys, nutrient => plateTotal(parts, nutrient));
}

/** What a plate holds when a food is eaten on it: its portion and every companion. */
export function onPlate({ portion, companions }: Plate, food: PlateFood, nutrient: Nutrient): Total {
  return plateTotal([{ food, portion }, ...companions], nutrient);
}
