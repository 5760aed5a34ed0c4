import { analyteKeys, analytes } from '#core/client/labs/analytes.ts';

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

type Json = Readonly<Record<string, unknown>>;

/**
 * An assessment's JSON with a result in its field, the rest as it is: weight loss 10 % over nothing gives `{ weightLoss: { percent3Months: 10 } }`. A laboratory result
 * joins the others without its day: the day that the sample was drawn is for the person to say.
 */
export function withCarried(assessment: Json | undefined, { field, value }: Carried): Json {
  const given = assessment ?? {};
  const [part = '', key = ''] = field.split('.');
  if (part === 'labs') {
    const labs: readonly unknown[] = Array.isArray(given.labs) ? given.labs : [];
    const analyte = analyteKeys.find(one => one === key);
    return analyte === undefined ? given : { ...given, labs: [...labs, { analyte, value, unit: analytes[analyte].unit }] };
  }
  const before = given[part];
  return { ...given, [part]: { ...(typeof before === 'object' ? before : {}), [key]: value } };
}
