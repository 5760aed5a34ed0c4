import { type Computed, computed, firstImpossible } from './computed.ts';

export type AlbuminuriaCategory = 'A1' | 'A2' | 'A3';
export type AcrUnit = 'mg/g' | 'mg/mmol';

const cutOffs: Readonly<Record<AcrUnit, readonly [a2From: number, a3Over: number]>> = { 'mg/g': [30, 300], 'mg/mmol': [3, 30] };

/**
 * The albuminuria category of a urine albumin-to-creatinine ratio, by the cut-off of its own unit: 30 mg/g is 3.39 mg/mmol, the
 * guideline rounds to 3, so a ratio is never converted first. 30 mg/g is A2, 3.0 mg/mmol is A2, 300 mg/g is A2.
 * Source: KDIGO CKD 2024 (as quoted).
 */
export function albuminuriaCategory(acr: number, unit: AcrUnit): Computed<AlbuminuriaCategory> {
  const refused = firstImpossible(['acr', acr, 0, 30_000, unit]);
  if (refused) return refused;
  const [a2From, a3Over] = cutOffs[unit];
  return computed(acr < a2From ? 'A1' : acr <= a3Over ? 'A2' : 'A3');
}
