import type { ReferenceAmount } from '#core/label/label.ts';
import type { Portion } from '#core/plate/plate.ts';
import table from '#data/reference-amounts.json' with { type: 'json' };

/** The reference amount of a food, as a portion of it, and what follows from it for claims. */
export interface ReferencePortion {
  /** Absent for a meal or main dish without an amount of its own. */
  readonly portion?: Portion;
  /** Meals and main dishes are judged per 100 g (21 CFR 101.13(l), (m); 101.61(b)(3), (5)). */
  readonly mealOrMainDish: boolean;
  /** 30 g or less, or 2 tablespoons (30 mL) or less: judged per 50 g as well (21 CFR 101.61(b)(2), (4)). */
  readonly small: boolean;
}

const portions = new Map(table.rows.map(({ key, amount, unit }) => [key, unit === 'g' ? { grams: amount } : { milliliters: amount }]));

const smallAtMost = 30;

/** `referencePortion("soup")` is 245 g. Undefined when no reference amount is known: none is printed, or its key is not in the table. */
export function referencePortion(reference: ReferenceAmount | undefined): ReferencePortion | undefined {
  if (reference === undefined) return undefined;
  if (typeof reference === 'string') {
    const portion = portions.get(reference);
    return portion && { portion, mealOrMainDish: false, small: isSmall(portion) };
  }
  const { grams, milliliters, kind } = reference;
  const mealOrMainDish = kind === 'meal' || kind === 'main-dish';
  const portion = grams ? { grams } : milliliters ? { milliliters } : undefined;
  if (portion === undefined) return mealOrMainDish ? { mealOrMainDish, small: false } : undefined;
  return { portion, mealOrMainDish, small: isSmall(portion) };
}

function isSmall(portion: { readonly grams: number } | { readonly milliliters: number }): boolean {
  return ('grams' in portion ? portion.grams : portion.milliliters) <= smallAtMost;
}
