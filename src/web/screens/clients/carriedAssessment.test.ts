import { expect, test } from 'vitest';
import { assessmentFromJson } from '#core/client/assessment/assessmentJson.ts';
import { assessmentFields } from '#core/client/formulas/catalog/assessmentFields.ts';
import { assessmentOf } from './assessmentOf.ts';
import { withCarried } from './carriedAssessment.ts';
import { typedAssessment } from './typedAssessment.ts';

const { value: whole } = assessmentFromJson({
  on: '2026-06-15',
  sex: 'female',
  age: { years: 64 },
  treatment: { setting: 'hemodialysis', place: 'in-center' },
  diabetes: false,
  weighings: [],
  labs: [{ analyte: 'phosphate', value: 6.8, unit: 'mg/dL', takenOn: '2026-06-08' }],
  weightLoss: { percent6Months: 12, cause: 'unintended' },
  conditions: [],
  medicines: [],
  supplements: [],
  symptoms: [],
  allergies: [],
  avoidedFoods: [],
  goals: [],
});

test('[CALC-9] a result is read by the assessment in each of its fields, and leaves the rest as it was', () => {
  expect(whole).toBeDefined();
  const begun = typedAssessment(whole, '2026-06-15');
  const before = assessmentOf(begun);
  for (const field of assessmentFields) {
    const typed = withCarried(begun, { field, value: 1.4 });
    // The day of a laboratory result is the person's to give.
    const dated = { ...typed, labs: typed.labs.map(lab => (lab.takenOn === '' ? { ...lab, takenOn: '2026-06-10' } : lab)) };
    const json = assessmentOf(dated);
    expect([field, assessmentFromJson(json).issues]).toEqual([field, []]);
    expect(json).not.toEqual(before);
    const [part = ''] = field.split('.');
    expect({ ...json, [part]: undefined }).toEqual({ ...before, [part]: undefined });
  }
  expect(assessmentOf(withCarried(begun, { field: 'weightLoss.percent3Months', value: 10 }))?.weightLoss).toEqual({
    percent3Months: 10,
    percent6Months: 12,
    cause: 'unintended',
  });
});
