import type { Source } from '#core/client/rules/source.ts';
import { albuminGPerDlInput, type Computed, computed, type FormulaFacts, firstImpossible } from './computed.ts';

/** The mg/dL form, and the SI form with its round figures. */
export const correctedCalciumSource: Source = { kind: 'paper', text: 'dialysis laboratory manual' };
export const correctedCalciumSiSource: Source = { kind: 'paper', text: 'SI form', toBeConfirmed: true };

export const correctedCalciumFacts: FormulaFacts = {
  title: 'Calcium corrected for albumin',
  unit: 'mg/dL',
  sources: [correctedCalciumSource, correctedCalciumSiSource],
  cautions: ['Poor in CKD: ionized calcium is better.'],
};

/**
 * Total calcium in mg/dL corrected for albumin: + 0.8 × (4.0 − albumin), only where albumin is under 4.0 g/dL.
 * 8.4 mg/dL with 2.8 g/dL: 9.36. 9.6 with 4.2 stays 9.60. Source: dialysis laboratory manual.
 */
export function correctedCalciumMgPerDl(calciumMgPerDl: number, albuminGPerDl: number): Computed {
  return (
    firstImpossible(['calciumMgPerDl', calciumMgPerDl, 3, 20, 'mg/dL'], albuminGPerDlInput(albuminGPerDl)) ??
    computed(calciumMgPerDl + 0.8 * Math.max(0, 4 - albuminGPerDl))
  );
}

/** The same in SI: mmol/L + 0.02 × (40 − albumin g/L), only under 40 g/L. 2.10 with 28: 2.34. Source: from memory. */
export function correctedCalciumMmolPerL(calciumMmolPerL: number, albuminGPerL: number): Computed {
  return (
    firstImpossible(['calciumMmolPerL', calciumMmolPerL, 0.75, 5, 'mmol/L'], ['albuminGPerL', albuminGPerL, 5, 70, 'g/L']) ??
    computed(calciumMmolPerL + 0.02 * Math.max(0, 40 - albuminGPerL))
  );
}
