import type { Plate, PlateFood, PlatePart } from '#core/plate/plate.ts';
import type { Total } from '#core/quantity/amount.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import type { Verdict } from './yardstick.ts';

/** What the user has at hand: foods that may be unsalted versions, and plates whose companions may be borrowed. */
export interface Shelf {
  readonly foods: readonly PlateFood[];
  readonly plates: readonly Plate[];
}

/** In the order in which equal changes are offered. More of the companion raises total sodium and energy: always last. */
export const wayInKinds = [
  'companion-without-salt',
  'smaller-portion',
  'half-and-half',
  'other-companion',
  'added-companion',
  'more-of-companion',
] as const;

export type WayInKind = (typeof wayInKinds)[number];

/** A change that the closed form says will do, before it is judged. */
export interface Candidate {
  readonly kind: WayInKind;
  /** "2 slices instead of 4 slices". */
  readonly action: string;
  /** The plate with the change made, under the id and title of the plate that was changed. */
  readonly plate: Plate;
  /** The unsalted version and its portion, where part of the portion is replaced by it. */
  readonly mixedWith?: PlatePart;
  /** The share of a food that is taken away, replaced or added; 0 for the same companion without salt. */
  readonly change: number;
}

/** A change that makes the food fit, judged again before it is offered. */
export interface WayIn extends Candidate {
  /** One sentence: the change and the new totals. */
  readonly what: string;
  readonly verdict: Verdict;
  /** The whole plate after the change: energy, sodium and every nutrient that a test looks at. */
  readonly totals: Readonly<Partial<Record<Nutrient, Total>>>;
}

export interface WaysIn {
  /** Smallest change first. */
  readonly ways: readonly WayIn[];
  /** Why there is none; absent when there is one. */
  readonly none?: string;
}
