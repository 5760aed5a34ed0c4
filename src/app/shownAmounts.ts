import type { Amounts, ReadLabel } from '#core/label/label.ts';
import { type Amount, unknownReasonText } from '#core/quantity/amount.ts';
import { type Nutrient, nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';

export interface ShownAmount {
  readonly nutrient: Nutrient;
  readonly name: string;
  readonly unit: string;
  readonly asPrinted?: string;
  readonly printed?: number;
  readonly range?: readonly [number | null, number | null];
  readonly source?: 'printed' | 'computed' | 'reference' | 'estimated';
  readonly text: string;
}

/** Amounts as a screen shows them: rounded outward at this last line, each with its unit, what is not known in words. */
export function shownAmounts(amounts: Amounts, asPrinted: ReadLabel['asPrinted'] = {}): readonly ShownAmount[] {
  return nutrientKeys.map(nutrient => {
    const { name, unit, decimals } = nutrients[nutrient];
    const words = asPrinted[nutrient];
    return { nutrient, name, unit, ...(words === undefined ? {} : { asPrinted: words }), ...shown(amounts[nutrient], unit, decimals) };
  });
}

function shown(amount: Amount, unit: string, decimals: number): Pick<ShownAmount, 'printed' | 'range' | 'source' | 'text'> {
  if (amount.kind === 'unknown') return { text: unknownReasonText[amount.reason] };
  // Half a unit of rounding is part of most ranges: one decimal more keeps them from growing on the screen.
  const lo = floorTo(amount.range.lo, decimals + 1);
  const hi = amount.range.hi === Number.POSITIVE_INFINITY ? null : ceilTo(amount.range.hi, decimals + 1);
  return {
    ...(amount.printed === undefined ? {} : { printed: roundHalfUp(amount.printed, decimals + 1) }),
    range: [lo, hi],
    source: amount.source,
    text: hi === null ? `${lo} ${unit} or more` : lo === hi ? `${lo} ${unit}` : `${lo} – ${hi} ${unit}`,
  };
}
