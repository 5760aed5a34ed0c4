import { type Computed, computed, type FormulaFacts, firstImpossible, weightKgInput } from './computed.ts';

export const ultrafiltrationRateFacts: FormulaFacts = {
  title: 'Ultrafiltration rate',
  unit: 'mL/kg/h',
  sources: [{ kind: 'definition', text: 'definition' }],
  cautions: ['Over 13 mL/kg/h is linked to harm (to be confirmed); the team decides.'],
};

/** Ultrafiltration in mL/kg/h: volume / hours / weight after. 2800 mL, 4 h, 70 kg: 10.0. */
export function ultrafiltrationMlPerKgH(volumeMl: number, hours: number, weightAfterKg: number): Computed {
  return (
    firstImpossible(
      ['volumeMl', volumeMl, 0, 12_000, 'mL'],
      ['hours', hours, 0.5, 12, 'h'],
      weightKgInput(weightAfterKg, 'weightAfterKg'),
    ) ?? computed(volumeMl / hours / weightAfterKg)
  );
}
