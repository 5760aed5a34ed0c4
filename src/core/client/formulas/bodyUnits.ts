import { cleanFloat } from '#core/quantity/rounding.ts';

/** Avoirdupois pound, NIST Handbook 44: 0.45359237 kg exactly. */
export const kilogramsPerPound = 0.45359237;
/** International inch: 2.54 cm exactly. */
const centimetersPerInch = 2.54;

export const weightUnits = ['kg', 'lb'] as const;
/** Units that a height in one figure comes in; feet and inches are two figures. */
export const heightUnits = ['cm', 'in', 'm'] as const;

/** A weight as it was entered; the unit stays with it. */
export interface EnteredWeight {
  readonly value: number;
  readonly unit: (typeof weightUnits)[number];
}

/** A height as it was entered. */
export type EnteredHeight =
  | { readonly value: number; readonly unit: (typeof heightUnits)[number] }
  | { readonly feet: number; readonly inches: number };

/** Weight in kg. 154 lb: 69.85 kg. Binary dust is removed, so that the same weight in two units is the same number. */
export function weightKgFrom({ value, unit }: EnteredWeight): number {
  return cleanFloat(unit === 'kg' ? value : value * kilogramsPerPound);
}

/** Height in cm. 5 ft 9 in: 175.26 cm. */
export function heightCmFrom(height: EnteredHeight): number {
  if ('feet' in height) return cleanFloat((height.feet * 12 + height.inches) * centimetersPerInch);
  const perUnit = { cm: 1, in: centimetersPerInch, m: 100 }[height.unit];
  return cleanFloat(height.value * perUnit);
}
