/** Fields of an assessment that a formula's result may be the value of (CALC-9), by their place in its JSON; `labs.` is a result of that analyte. */
export const assessmentFields = [
  'weightLoss.percent3Months',
  'weightLoss.percent6Months',
  'intake.proteinG',
  'labs.spKtV',
  'labs.ureaReduction',
  'labs.proteinCatabolicRate',
] as const;

export type AssessmentField = (typeof assessmentFields)[number];

/** A result that is carried into an assessment. */
export interface Carried {
  readonly field: AssessmentField;
  /** As it was shown. */
  readonly value: number;
}
