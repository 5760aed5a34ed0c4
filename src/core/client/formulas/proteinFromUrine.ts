import { type Computed, computed, type FormulaFacts, firstImpossible, weightKgInput } from './computed.ts';

export const proteinFromUrineFacts: FormulaFacts = {
  title: 'Protein intake from urine (Maroni)',
  unit: 'g/day',
  sources: [
    { kind: 'paper', text: 'Maroni, Kidney Int 1985' },
    { kind: 'paper', text: 'BMC Nephrol 2016 (s12882-016-0282-y), Table 5' },
  ],
  cautions: [
    'Steady state only. Is the collection complete? Creatinine 15-25 mg/kg a day in men, 10-20 in women (to be confirmed).',
    'Urine protein counts only over 5 g a day (to be confirmed).',
  ],
};

const ureaNitrogenInput = (gPerDay: number) => ['ureaNitrogenGPerDay', gPerDay, 0, 60, 'g/day'] as const;

/**
 * Protein intake in g/day by Maroni: 6.25 × (urine urea nitrogen g/day + 0.031 × kg); urine protein is added where it is over 5 g/day.
 * 8 g, 70 kg: 63.6 g; with 5.5 g urine protein: 69.1 g. 10 g, 80 kg: 78.0 g. Source: Maroni 1985; BMC Nephrol 2016, Table 5.
 */
export function proteinGFromUrine(input: { ureaNitrogenGPerDay: number; weightKg: number; urineProteinGPerDay?: number }): Computed {
  const { ureaNitrogenGPerDay, weightKg, urineProteinGPerDay = 0 } = input;
  return (
    firstImpossible(ureaNitrogenInput(ureaNitrogenGPerDay), weightKgInput(weightKg), [
      'urineProteinGPerDay',
      urineProteinGPerDay,
      0,
      60,
      'g/day',
    ]) ?? computed(6.25 * (ureaNitrogenGPerDay + 0.031 * weightKg) + (urineProteinGPerDay > 5 ? urineProteinGPerDay : 0))
  );
}

/** The other form of the same table: 9.35 × G + 11.04 with G in mg/min. 8 g/day is 5.56 mg/min: 63.0 g/day. */
export function proteinGFromUreaGeneration(ureaNitrogenGPerDay: number): Computed {
  return firstImpossible(ureaNitrogenInput(ureaNitrogenGPerDay)) ?? computed((9.35 * ureaNitrogenGPerDay * 1000) / 1440 + 11.04);
}

/** Urea nitrogen in g from urea in mmol: × 0.028014 (molar mass of N₂). 300 mmol: 8.40 g. */
export function ureaNitrogenGFromUreaMmol(ureaMmol: number): Computed {
  return firstImpossible(['ureaMmol', ureaMmol, 0, 2200, 'mmol']) ?? computed(ureaMmol * 0.028014);
}

/** Urea nitrogen in g from urea in g: / 2.14 (BMC Nephrol 2016, Table 5). 18 g: 8.41 g. */
export function ureaNitrogenGFromUreaG(ureaG: number): Computed {
  return firstImpossible(['ureaG', ureaG, 0, 130, 'g']) ?? computed(ureaG / 2.14);
}
