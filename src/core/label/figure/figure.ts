import type { UnknownReason } from '#core/quantity/amount.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import type { PanelKey } from '../panelKeys.ts';

/** A printed figure taken apart, in the unit of its panel key. Never both without a value and without a percent. */
export interface Figure {
  readonly kind: 'figure';
  readonly value?: number;
  /** Worth of the last printed digit: 0.1 for "0,8 g", 1 for "140". */
  readonly place?: number;
  /** "<1 g", "less than 5 mg": the value is the bound. */
  readonly lessThan?: boolean;
  /** The %DV as printed. */
  readonly percent?: number;
  /** "<2 %", or the asterisk of 21 CFR 101.9(c)(8)(iii). */
  readonly percentLessThan?: boolean;
  /** "Not a significant source of …" stands where the figure would be. */
  readonly notSignificant?: boolean;
  /** Another unit than the key's was printed, so `place` is not the panel's own rounding step. */
  readonly converted?: boolean;
}

/** A figure that could not be read: why, for the amount that stays unknown. */
export interface NoFigure {
  readonly kind: 'no-figure';
  readonly reason: UnknownReason;
}

export type PanelUnit = 'kcal' | 'kJ' | 'g' | 'mg' | 'mcg' | 'mL';

export function unitOf(key: PanelKey): PanelUnit {
  if (key === 'saltG') return 'g';
  if (key === 'energyKj') return 'kJ';
  return nutrients[key].unit;
}

export function nameOf(key: PanelKey): string {
  if (key === 'saltG') return 'salt';
  if (key === 'energyKj') return 'energy in kJ';
  return nutrients[key].name;
}

/** True for the keys that are nutrients; salt and kilojoules only lead to one. */
export function isNutrientKey(key: PanelKey): key is Nutrient {
  return key !== 'saltG' && key !== 'energyKj';
}
