import { albuminGPerDlInput, type Computed, computed, type FormulaFacts, firstImpossible } from './computed.ts';

export const anionGapFacts: FormulaFacts = {
  title: 'Anion gap',
  unit: 'mmol/L',
  sources: [{ kind: 'paper', text: 'dialysis laboratory manual' }],
  cautions: ['The correction for albumin is to be confirmed.'],
};

/** Anion gap in mmol/L: sodium − chloride − bicarbonate. 138 − 102 − 18 = 18. Source: dialysis laboratory manual. */
export function anionGapMmolPerL(sodiumMmolPerL: number, chlorideMmolPerL: number, bicarbonateMmolPerL: number): Computed {
  return (
    firstImpossible(
      ['sodiumMmolPerL', sodiumMmolPerL, 90, 200, 'mmol/L'],
      ['chlorideMmolPerL', chlorideMmolPerL, 50, 170, 'mmol/L'],
      ['bicarbonateMmolPerL', bicarbonateMmolPerL, 2, 60, 'mmol/L'],
    ) ?? computed(sodiumMmolPerL - chlorideMmolPerL - bicarbonateMmolPerL)
  );
}

/** The gap corrected for albumin: + 2.5 × (4.0 − albumin g/dL). 18 with 2.8 g/dL: 21. Source: from memory. */
export function anionGapMmolPerLForAlbumin(anionGap: number, albuminGPerDl: number): Computed {
  return (
    firstImpossible(['anionGap', anionGap, -50, 100, 'mmol/L'], albuminGPerDlInput(albuminGPerDl)) ??
    computed(anionGap + 2.5 * (4 - albuminGPerDl))
  );
}
