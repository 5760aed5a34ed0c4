import { roundHalfUp } from '#core/quantity/rounding.ts';
import { type Computed, computed, type FormulaFacts, firstImpossible, refuse } from './computed.ts';
import { type GfrCategory, gfrCategory } from './gfrCategory.ts';

/** As formulas take it. */
export const sexes = ['female', 'male'] as const;
export type Sex = (typeof sexes)[number];

export const egfrFacts: FormulaFacts = {
  title: 'eGFR, CKD-EPI 2021 creatinine',
  unit: 'mL/min/1.73 m²',
  sources: [{ kind: 'paper', text: 'Inker, N Engl J Med 2021;385:1737' }],
  cautions: [
    'Not on dialysis, in acute kidney injury or while creatinine is not steady, in pregnancy, under 18.',
    'Misleading after amputation, with very low or high muscle mass, creatine or much cooked meat, trimethoprim (to be confirmed).',
    'Creatinine with cystatin C is preferred where GFR decides (KDIGO CKD 2024, 1B/1C). A laboratory’s own eGFR is shown first.',
  ],
};

/** `category` is that of the shown whole number, so that number and category never disagree (common laboratory practice). */
export interface Egfr {
  readonly egfrMlPerMin173: number;
  readonly shownMlPerMin173: number;
  readonly category: GfrCategory;
}

/**
 * Estimated GFR in mL/min/1.73 m² by CKD-EPI 2021 (race-free) from IDMS-traceable serum creatinine. Adults of 18 years and more.
 * A woman of 60 with 1.50 mg/dL has 39.65, shown as 40, G3b. A man of 75 with 4.00 mg/dL has 14.87, shown as 15, so G4.
 * Source: Inker, N Engl J Med 2021;385:1737; coefficients on the National Kidney Foundation's equation page.
 */
export function egfr(input: { sex: Sex; ageYears: number; creatinineMgPerDl: number }): Computed<Egfr> {
  const { sex, ageYears, creatinineMgPerDl } = input;
  const refused = firstImpossible(['ageYears', ageYears, 0, 120, 'years'], ['creatinineMgPerDl', creatinineMgPerDl, 0.1, 30, 'mg/dL']);
  if (refused) return refused;
  if (ageYears < 18) return refuse('under-18', 'ageYears', `CKD-EPI 2021 is for adults; ${ageYears} years is under 18.`);
  const [kappa, alpha, factor] = sex === 'female' ? [0.7, -0.241, 1.012] : [0.9, -0.302, 1];
  const ratio = creatinineMgPerDl / kappa;
  const egfrMlPerMin173 = 142 * Math.min(ratio, 1) ** alpha * Math.max(ratio, 1) ** -1.2 * 0.9938 ** ageYears * factor;
  const shownMlPerMin173 = roundHalfUp(egfrMlPerMin173, 0);
  return computed({ egfrMlPerMin173, shownMlPerMin173, category: gfrCategory(shownMlPerMin173) });
}
