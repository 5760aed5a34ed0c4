import { bunMgPerDlInput, type Computed, computed, type FormulaFacts, firstImpossible, type Refused, weightKgInput } from './computed.ts';

export const spKtVFacts: FormulaFacts = {
  title: 'spKt/V',
  unit: '',
  sources: [{ kind: 'paper', text: 'Daugirdas, J Am Soc Nephrol 1993;4:1205' }],
  cautions: ['Three sessions a week: at least 1.2, aim 1.4 (KDOQI 2006).'],
};

export const ureaReductionFacts: FormulaFacts = {
  title: 'Urea reduction ratio',
  unit: '%',
  sources: [{ kind: 'guideline', text: 'KDOQI Hemodialysis Adequacy 2006, Guideline 4', grade: 'A' }],
  cautions: ['At least 65 %, aim 70 % (KDOQI 2006).'],
};

/**
 * Single-pool Kt/V by the second formula of Daugirdas: −ln(R − 0.008 t) + (4 − 3.5 R) × UF / W; R is BUN after by before, t in h, UF in
 * L, W after in kg. 70 to 20, 4 h, 2.8 L, 70 kg: 1.49. Refused when BUN does not fall. Source: Daugirdas 1993.
 */
export function spKtV(input: {
  bunBeforeMgPerDl: number;
  bunAfterMgPerDl: number;
  hours: number;
  ultrafiltrationL: number;
  weightAfterKg: number;
}): Computed {
  const { bunBeforeMgPerDl, bunAfterMgPerDl, hours, ultrafiltrationL, weightAfterKg } = input;
  const ratio = bunAfterMgPerDl / bunBeforeMgPerDl;
  return (
    notFallen(bunBeforeMgPerDl, bunAfterMgPerDl) ??
    firstImpossible(
      ['hours', hours, 0.5, 12, 'h'],
      ['ultrafiltrationL', ultrafiltrationL, 0, 12, 'L'],
      weightKgInput(weightAfterKg, 'weightAfterKg'),
      ['BUN after by before', ratio - 0.008 * hours, 0.01, 1, ''],
    ) ??
    computed(-Math.log(ratio - 0.008 * hours) + ((4 - 3.5 * ratio) * ultrafiltrationL) / weightAfterKg)
  );
}

/** Urea reduction ratio in %: 70 to 20 mg/dL is 71.4 %. Source: KDOQI 2006. */
export function ureaReductionPercent(bunBeforeMgPerDl: number, bunAfterMgPerDl: number): Computed {
  return notFallen(bunBeforeMgPerDl, bunAfterMgPerDl) ?? computed((1 - bunAfterMgPerDl / bunBeforeMgPerDl) * 100);
}

function notFallen(before: number, after: number): Refused | undefined {
  return firstImpossible(bunMgPerDlInput(before, 'bunBeforeMgPerDl'), bunMgPerDlInput(after, 'bunAfterMgPerDl'), [
    'bunAfterMgPerDl',
    after,
    1,
    before,
    'mg/dL',
  ]);
}
