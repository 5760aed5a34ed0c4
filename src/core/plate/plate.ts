import type { ReadLabel } from '#core/label/label.ts';
import type { Total } from '#core/quantity/amount.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';

/** How much is eaten. A household measure counts in the label's own measure ("slice") or one whose mass is known. */
export type Portion =
  | { readonly servings: number }
  | { readonly grams: number }
  | { readonly milliliters: number }
  | { readonly measure: string; readonly count: number };

/** A food with what a plate has to know about it. */
export interface PlateFood {
  readonly id: string;
  readonly name: string;
  readonly label: ReadLabel;
  /** Grams per millilitre, where somebody has measured it; without it grams and millilitres are never exchanged. */
  readonly densityGPerMl?: number;
  /** Household measures beyond the label's own: { slice: 14 }, grams each. */
  readonly gramsPerMeasure?: Readonly<Record<string, number>>;
}

/** A food that another food is eaten with, and its portion. */
export interface Companion {
  readonly food: PlateFood;
  readonly portion: Portion;
  /** The same companion cooked or bought without salt, where there is one. */
  readonly withoutSalt?: PlateFood;
}

/** How a category is eaten: the portion of the food that is surveyed, and what it is eaten with. */
export interface Plate {
  readonly id: string;
  /** As it reads in a sentence: "two slices of low-sodium bread". */
  readonly title: string;
  readonly portion: Portion;
  readonly companions: readonly Companion[];
  /** The categories that are eaten this way; any when missing. A way in borrows companions only from plates that share one. */
  readonly categories?: readonly string[];
}

/** One portion of one food on a plate. */
export interface PlatePart {
  readonly food: PlateFood;
  readonly portion: Portion;
}

export type PlateTotals = Readonly<Record<Nutrient, Total>>;
