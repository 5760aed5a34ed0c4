import { type Computed, computed, type FormulaFacts, firstImpossible } from './computed.ts';

export const peritonealProteinFacts: FormulaFacts = {
  title: 'Protein equivalent of nitrogen appearance (peritoneal dialysis)',
  unit: 'g/day',
  sources: [{ kind: 'paper', text: 'Bergström 1998', toBeConfirmed: true }],
  cautions: ['Steady state only.'],
};

/**
 * Protein equivalent in g/day on peritoneal dialysis from urea nitrogen appearance (urine and dialysate): 20.1 + 7.5 × UNA; where the
 * dialysate protein is measured, 15.1 + 6.95 × UNA + its grams. UNA 6 g: 65.1; with 6 g loss: 62.8. Source: Bergström 1998 (from memory).
 */
export function peritonealProteinG(ureaNitrogenAppearanceGPerDay: number, dialysateProteinGPerDay?: number): Computed {
  const una = ureaNitrogenAppearanceGPerDay;
  return (
    firstImpossible(
      ['ureaNitrogenAppearanceGPerDay', una, 0, 60, 'g/day'],
      ['dialysateProteinGPerDay', dialysateProteinGPerDay ?? 0, 0, 60, 'g/day'],
    ) ?? computed(dialysateProteinGPerDay === undefined ? 20.1 + 7.5 * una : 15.1 + 6.95 * una + dialysateProteinGPerDay)
  );
}
