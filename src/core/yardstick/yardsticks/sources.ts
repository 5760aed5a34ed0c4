import type { BoundSource } from '#core/yardstick/yardstick.ts';

/** Sources and cautions that several built-in yardsticks share. Grades and editions as their publications give them. */

export const sodiumEnergyPractice: BoundSource = { kind: 'common-practice', text: 'common practice, no source' };

/** The additive comes first among the sources of phosphorus to weigh: KDOQI 2020, opinion. */
export const phosphorusSource: BoundSource = { kind: 'guideline', text: 'KDOQI 2020, weigh the source of phosphorus (opinion)' };

export const potassiumAdditiveSource: BoundSource = {
  kind: 'from-memory',
  text: 'KDIGO 2024 practice point on absorbable potassium in processed food, from memory',
};

export const potassiumClassSource: BoundSource = {
  kind: 'clinic',
  text: "National Kidney Foundation handout; cut-offs are a clinic's choice",
};

export const phosphorusClassSource: BoundSource = { kind: 'clinic', text: "from memory; cut-offs are a clinic's choice" };

export const forDietitians: readonly string[] = [
  "For licensed dietitians who work with the client's kidney team.",
  'Local protocols come first.',
  'Labs decide about potassium and phosphorus, not the setting or the stage.',
];

export const roundingCaution = 'The range covers rounding on the label alone, not the 20 % that compliance allows (21 CFR 101.9(g)).';

export const noneNamedCaution =
  'None named on the label is not a proof: incidental additives and processing aids need not be listed (21 CFR 101.100(a)(3), from memory).';

export const unprintedCaution = 'Labels seldom print phosphorus; what is not printed is unknown, not zero.';
