import { roundHalfUp } from '#core/quantity/rounding.ts';

/** From the best to the worst. */
export const gfrCategories = ['G1', 'G2', 'G3a', 'G3b', 'G4', 'G5'] as const;
export type GfrCategory = (typeof gfrCategories)[number];

/**
 * The GFR category of an eGFR in mL/min/1.73 m², by the whole number that is shown. 14.87 shows as 15, so G4.
 * One result never makes a stage (chronic means 3 months), and G1 and G2 are CKD only with a marker of damage.
 * Source: KDIGO CKD 2024 (as quoted).
 */
export function gfrCategory(egfrMlPerMin173: number): GfrCategory {
  const shown = roundHalfUp(egfrMlPerMin173, 0);
  if (shown >= 90) return 'G1';
  if (shown >= 60) return 'G2';
  if (shown >= 45) return 'G3a';
  if (shown >= 30) return 'G3b';
  return shown >= 15 ? 'G4' : 'G5';
}
