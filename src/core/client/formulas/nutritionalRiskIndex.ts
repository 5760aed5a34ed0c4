import { type Computed, computed, type FormulaFacts, firstImpossible, weightKgInput } from './computed.ts';

export const nutritionalRiskIndexFacts: FormulaFacts = {
  title: 'GNRI',
  unit: '',
  sources: [{ kind: 'paper', text: 'Bouillanne 2005, as in public code', secondHand: true }],
  cautions: [
    'On hemodialysis the cut-off is about 91 to 92 (to be confirmed).',
    'Albumin falls with inflammation and fluid: not a diet score alone.',
  ],
};

/**
 * Geriatric nutritional risk index: 1.489 × albumin g/L + 41.7 × weight/ideal, the ratio at most 1.
 * 34 g/L, 58 of 62 kg: 89.6. 40 g/L, 80 of 62 kg: 101.3. Source: Bouillanne 2005.
 */
export function geriatricNutritionalRiskIndex(albuminGPerL: number, weightKg: number, idealKg: number): Computed {
  return (
    firstImpossible(['albuminGPerL', albuminGPerL, 5, 70, 'g/L'], weightKgInput(weightKg), weightKgInput(idealKg, 'idealKg')) ??
    computed(1.489 * albuminGPerL + 41.7 * Math.min(weightKg / idealKg, 1))
  );
}
