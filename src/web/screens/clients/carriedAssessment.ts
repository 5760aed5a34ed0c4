import type { AssessmentField, Carried } from '#core/client/formulas/catalog/assessmentFields.ts';
import { type Analyte, analytes } from '#core/client/labs/analytes.ts';
import type { FieldName, TypedAssessment } from './typedAssessment.ts';
import { typedLab } from './typedResults.ts';

type Place = { readonly field: FieldName } | { readonly analyte: Analyte };

/** Where in the form a result of a calculator goes. */
const places: Readonly<Record<AssessmentField, Place>> = {
  'weightLoss.percent3Months': { field: 'loss3' },
  'weightLoss.percent6Months': { field: 'loss6' },
  'intake.proteinG': { field: 'proteinG' },
  'labs.spKtV': { analyte: 'spKtV' },
  'labs.ureaReduction': { analyte: 'ureaReduction' },
  'labs.proteinCatabolicRate': { analyte: 'proteinCatabolicRate' },
};

/** A form with a result filled in, the rest as it is. A laboratory result has no day yet: when the blood was drawn is the person's to say. */
export function withCarried(typed: TypedAssessment, { field, value }: Carried): TypedAssessment {
  const place = places[field];
  if ('field' in place) return { ...typed, fields: { ...typed.fields, [place.field]: String(value) } };
  const lab = typedLab({ analyte: place.analyte, value, unit: analytes[place.analyte].unit, takenOn: '' });
  return { ...typed, labs: [...typed.labs, lab] };
}
