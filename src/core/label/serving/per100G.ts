import { type Amount, type KnownAmount, scaleAmount, type UnknownReason, unknown } from '#core/quantity/amount.ts';
import { divide, type Interval, scale } from '#core/quantity/interval.ts';
import { type Nutrient, nutrientKeys } from '#core/quantity/nutrients.ts';
import type { Amounts, PanelBasis, ReadLabel } from '../label.ts';

/** What the conversions need of a label. */
export type WeighedLabel = Pick<ReadLabel, 'amounts' | 'amountsFor' | 'servingGrams' | 'servingMilliliters'> & {
  readonly printed: { readonly basis: PanelBasis };
};

/**
 * Amounts in 100 g of the food. The serving's mass is rounded too, so its range widens theirs: 140 mg of sodium in 30 g
 * is 466.7 mg in 100 g, 450.8 up to 491.5 mg. Unknown where the label does not tell grams.
 */
export function per100G(label: WeighedLabel): Amounts {
  const { servingGrams, servingMilliliters } = label;
  switch (label.printed.basis) {
    case 'per-100-g':
      return label.amounts;
    case 'per-serving':
      return per100(label.amounts, label.amountsFor.grams, servingGrams, servingMilliliters ? 'no-density' : 'no-serving-mass');
    case 'per-100-ml':
      return per100(label.amounts, label.amountsFor.grams, massOf100(servingGrams, servingMilliliters), 'no-density');
  }
}

/** Amounts in 100 mL of the food, as `per100G` for volumes. */
export function per100Ml(label: WeighedLabel): Amounts {
  const { servingGrams, servingMilliliters } = label;
  switch (label.printed.basis) {
    case 'per-100-ml':
      return label.amounts;
    case 'per-serving':
      return per100(label.amounts, label.amountsFor.milliliters, servingMilliliters, servingGrams ? 'no-density' : 'no-serving-mass');
    case 'per-100-g':
      return per100(label.amounts, label.amountsFor.milliliters, massOf100(servingMilliliters, servingGrams), 'no-density');
  }
}

/** What 100 of the one unit is in the other, where the serving is printed in both. */
function massOf100(wanted: Interval | undefined, given: Interval | undefined): Interval | undefined {
  return wanted && given ? divide(scale(wanted, 100), given) : undefined;
}

function per100(amounts: Amounts, printed: number | undefined, quantity: Interval | undefined, reason: UnknownReason): Amounts {
  const converted: Partial<Record<Nutrient, Amount>> = {};
  for (const nutrient of nutrientKeys) {
    const amount = amounts[nutrient];
    converted[nutrient] = amount.kind === 'unknown' ? amount : printed && quantity ? spread(amount, printed, quantity) : unknown(reason);
  }
  return converted as Amounts;
}

function spread(amount: KnownAmount, printed: number, quantity: Interval): Amount {
  return { ...(scaleAmount(amount, 100 / printed) as KnownAmount), range: divide(scale(amount.range, 100), quantity) };
}
