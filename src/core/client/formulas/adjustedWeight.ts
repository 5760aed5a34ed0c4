import { type Computed, computed, type FormulaFacts, firstImpossible, weightKgInput } from './computed.ts';

export const adjustedWeightFacts: FormulaFacts = {
  title: 'Adjusted weight (obesity)',
  unit: 'kg',
  sources: [{ kind: 'common-practice', text: 'ideal + 0.25 × (actual − ideal), common practice', saysPractice: true }],
  cautions: ['Not the adjusted edema-free weight: this one weights ideal 75 to actual 25. 0.4 is the factor of drug doses.'],
};

/**
 * Adjusted weight in kg for obesity: ideal + 0.25 × (actual − ideal). Refused when actual is not above ideal.
 * 98 kg with an ideal of 54.8 kg: 65.6 kg. Common practice.
 */
export function adjustedWeightKg(actualKg: number, idealKg: number): Computed {
  return (
    firstImpossible(weightKgInput(idealKg, 'idealKg'), weightKgInput(actualKg, 'actualKg'), ['actualKg', actualKg, idealKg, 400, 'kg']) ??
    computed(idealKg + 0.25 * (actualKg - idealKg))
  );
}
