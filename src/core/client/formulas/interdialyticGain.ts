import { type Computed, computed, type FormulaFacts, firstImpossible, weightKgInput } from './computed.ts';

export const interdialyticGainFacts: FormulaFacts = {
  title: 'Interdialytic weight gain',
  unit: '% of dry weight',
  sources: [{ kind: 'definition', text: 'definition' }],
  cautions: [
    'Guidance differs: 4 to 4.5 % or less (European Best Practice Guideline 2007, to be confirmed), over 4.8 % linked to mortality (to be confirmed), under 5.7 % may reflect good intake (Semin Dial 2006;19:429).',
  ],
};

export interface InterdialyticGain {
  readonly gainKg: number;
  readonly gainPercent: number;
}

/** Gain between sessions in kg and in % of dry weight; negative is below dry weight. 75.6 over dry 72.0: 3.6 kg, 5.0 %. */
export function interdialyticGain(beforeKg: number, dryKg: number): Computed<InterdialyticGain> {
  const refused = firstImpossible(weightKgInput(beforeKg, 'beforeKg'), weightKgInput(dryKg, 'dryKg'));
  if (refused) return refused;
  const gainKg = beforeKg - dryKg;
  return firstImpossible(['gain', gainKg, -15, 25, 'kg']) ?? computed({ gainKg, gainPercent: (gainKg / dryKg) * 100 });
}
