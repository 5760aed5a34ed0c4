import { type Computed, computed, type FormulaFacts, firstImpossible, heightCmInput, weightKgInput } from './computed.ts';

export const bodyMassIndexFacts: FormulaFacts = {
  title: 'Body mass index',
  unit: 'kg/m²',
  sources: [{ kind: 'definition', text: 'definition: weight by height squared' }],
  cautions: ['After amputation: corrected weight and the height from before.'],
};

/** BMI in kg/m². 82 kg at 175 cm is 26.8. */
export function bodyMassIndex(weightKg: number, heightCm: number): Computed {
  return firstImpossible(weightKgInput(weightKg), heightCmInput(heightCm)) ?? computed(weightKg / (heightCm / 100) ** 2);
}
