import { type KeyOf, vocabulary } from '../vocabulary.ts';
import { type Computed, computed, type FormulaFacts, firstImpossible, weightKgInput } from './computed.ts';

/** Parts of one side. */
export const missingParts = vocabulary(['hand', 'forearm-with-hand', 'whole-arm', 'foot', 'lower-leg-with-foot', 'mid-thigh', 'whole-leg']);
export type MissingPart = KeyOf<typeof missingParts>;

/** Percent of body weight of a missing part on one side. Osterkamp 1995 (as quoted); a mid-thigh loss is about 11 % and varies. */
export const missingPartPercent: Readonly<Record<MissingPart, number>> = {
  hand: 0.7,
  'forearm-with-hand': 2.3,
  'whole-arm': 5.0,
  foot: 1.5,
  'lower-leg-with-foot': 5.9,
  'mid-thigh': 11,
  'whole-leg': 16.0,
};

export const amputationFacts: FormulaFacts = {
  title: 'Weight corrected for amputation',
  unit: 'kg',
  sources: [{ kind: 'paper', text: 'Osterkamp 1995', secondHand: true }],
  cautions: ['For BMI alone: energy and protein are set on the tissue that is there, unless the dietitian picks this (common practice).'],
};

/**
 * Weight in kg as it would be with the missing parts, each entry one side: 70.0 kg without a lower leg is 74.4 kg.
 * No part gives the weight itself. Refused when the parts add up to half the body. Source: Osterkamp 1995 (as quoted).
 */
export function weightKgBeforeAmputation(weightKg: number, missing: readonly MissingPart[]): Computed {
  const percent = missing.reduce((sum, part) => sum + missingPartPercent[part], 0);
  return (
    firstImpossible(weightKgInput(weightKg), ['missing parts', percent, 0, 50, '% of body weight']) ??
    computed(weightKg / (1 - percent / 100))
  );
}
