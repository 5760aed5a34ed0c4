import { type Computed, computed, type FormulaFacts, firstImpossible, weightKgInput } from './computed.ts';

export const adjustedEdemaFreeWeightFacts: FormulaFacts = {
  title: 'Adjusted edema-free weight',
  unit: 'kg',
  sources: [{ kind: 'guideline', text: 'KDOQI Nutrition 2000, Guideline 12', grade: 'OPINION' }],
  cautions: ['The standard weight (NHANES II median by sex, age, height and frame) is entered by the dietitian.'],
};

/**
 * Adjusted edema-free weight in kg: edema-free + 0.25 × (standard − edema-free), only where the edema-free weight is under 95 % or
 * over 115 % of standard; else the edema-free weight stands. With a standard of 62 kg: 98 gives 89.0, 48 gives 51.5, 66 stays 66.0.
 * Source: KDOQI Nutrition 2000, Guideline 12 (Opinion).
 */
export function adjustedEdemaFreeWeightKg(edemaFreeKg: number, standardKg: number): Computed {
  const refused = firstImpossible(weightKgInput(edemaFreeKg, 'edemaFreeKg'), weightKgInput(standardKg, 'standardKg'));
  if (refused) return refused;
  const share = edemaFreeKg / standardKg;
  return computed(share < 0.95 || share > 1.15 ? edemaFreeKg + 0.25 * (standardKg - edemaFreeKg) : edemaFreeKg);
}
