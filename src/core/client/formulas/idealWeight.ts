import { kilogramsPerPound } from './bodyUnits.ts';
import { type Computed, computed, type FormulaFacts, firstImpossible, heightCmInput } from './computed.ts';
import type { Sex } from './egfr.ts';

export const idealWeightFacts: FormulaFacts = {
  title: 'Ideal weight, Hamwi',
  unit: 'kg',
  sources: [{ kind: 'paper', text: 'Hamwi 1964', toBeConfirmed: true }],
  cautions: [
    'Plus or minus 10 % for frame.',
    'Under 5 feet (152.4 cm) uncertain: 5 lb (women) or 6 lb (men) less an inch; some take 2 lb (to be confirmed).',
  ],
};

export const devineWeightFacts: FormulaFacts = {
  title: 'Ideal weight, Devine',
  unit: 'kg',
  sources: [{ kind: 'paper', text: 'Devine 1974, as in public formula lists', secondHand: true }],
  cautions: ['Made for drug doses; shown only if chosen.', 'Not defined under 5 feet (152.4 cm).'],
};

/**
 * Ideal weight in kg by Hamwi: men 106 lb and 6 lb an inch over 60, women 100 lb and 5 lb; under 60
 * inches as much less (care rules 4, from memory, uncertain). A woman of 147.3 cm (58 in): 90 lb, 40.8 kg. A woman of 163 cm: 54.8 kg. A man of 178 cm: 75.5 kg. Source: Hamwi 1964 (from memory).
 */
export function idealWeightKgHamwi(sex: Sex, heightCm: number): Computed {
  const refused = firstImpossible(heightCmInput(heightCm));
  if (refused) return refused;
  const over = heightCm / 2.54 - 60;
  return computed((sex === 'male' ? 106 + 6 * over : 100 + 5 * over) * kilogramsPerPound);
}

/** Under 5 feet: the ideal weight is uncertain. */
export function isShort(heightCm: number): boolean {
  return heightCm < 152.4;
}

/**
 * Ideal weight in kg by Devine: men 50 kg and 2.3 kg an inch over 60, women 45.5 kg and 2.3 kg. From 5 feet up.
 * A man of 177.8 cm (70 in): 73.0 kg. Source: public formula list.
 */
export function idealWeightKgDevine(sex: Sex, heightCm: number): Computed {
  const over = inchesOver60(heightCm);
  if (over.kind === 'refused') return over;
  return computed((sex === 'male' ? 50 : 45.5) + 2.3 * over.value);
}

function inchesOver60(heightCm: number): Computed {
  return firstImpossible(['heightCm', heightCm, 152.4, 250, 'cm']) ?? computed(heightCm / 2.54 - 60);
}
