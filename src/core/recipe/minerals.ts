import type { Interval } from '#core/quantity/interval.ts';
import type { RowMeaning } from './recipeModel.ts';

/** A mineral in milligrams per serving: between which ends it surely lies, and where it likely does. */
export interface MineralRange {
  /** Sure if the printed figures hold to their rounding and the ingredients to the spread of the table; not the 20 % of 21 CFR 101.9(g). */
  readonly sure: Interval;
  /** 5 %, 50 % and 95 % of the recipes drawn. */
  readonly likely: { readonly lo: number; readonly mid: number; readonly hi: number };
}

/** A row of the label that no recipe keeps, and by how much it had to be relaxed, in its own unit. */
export interface Conflict {
  readonly meaning: RowMeaning;
  readonly by: number;
}

/** An ingredient and what it likely brings in a serving. */
export interface Driver {
  readonly name: string;
  readonly mg: number;
  /** Part of the likely whole, 0 to 1. */
  readonly share: number;
}

/** What holds an additive down: the limit it runs into first. */
export interface AdditiveLimit {
  readonly name: string;
  readonly atMostMg: number;
  readonly because: string;
}

export interface MineralEstimate {
  readonly kind: 'estimate';
  readonly servingG: Interval;
  readonly phosphorus: MineralRange;
  readonly potassium: MineralRange;
  readonly addedPhosphorus: MineralRange;
  readonly addedPotassium: MineralRange;
  /** Between the least of the lowest and the most of the highest absorbed fraction, over the 90 % range; never one figure. */
  readonly absorbedPhosphorus: Interval;
  /** Likely share of the mass whose composition is known: matched foods, water and additives. */
  readonly matchedShare: number;
  readonly phosphorusDrivers: readonly Driver[];
  readonly potassiumDrivers: readonly Driver[];
  readonly limits: readonly AdditiveLimit[];
  readonly conflicts: readonly Conflict[];
}

export interface NoEstimate {
  readonly kind: 'cannot-be-bounded';
  /** "the label has no ingredient statement". */
  readonly because: string;
}
