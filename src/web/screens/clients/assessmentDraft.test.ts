import { describe, expect, test } from 'vitest';
import { assessmentFromJson } from '#core/client/assessmentFromJson.ts';
import { assessmentOf, draftOf, labDraftOf } from './assessmentDraft.ts';

const today = '2026-06-15';

/** Every key of the format of peritoneal dialysis. */
const full = {
  on: today,
  sex: 'female',
  age: { bornOn: '1961-03-02' },
  treatment: {
    setting: 'peritoneal-dialysis',
    method: 'capd',
    startedOn: '2025-01-10',
    bags: [{ liters: 2, percent: 1.5, labeledAs: 'dextrose' }],
    icodextrin: true,
    absorbedShare: 0.7,
  },
  diabetes: true,
  acuteKidneyInjury: true,
  pregnant: true,
  breastfeeding: true,
  stage: { value: 'G5', on: '2025-01-02' },
  height: { value: 165, unit: 'cm' },
  weighings: [{ weight: { value: 70, unit: 'kg' }, kind: 'after-drain', on: '2026-06-10', unitConfirmed: true }],
  missingParts: ['foot'],
  urineMlPerDay: { value: 400, on: '2026-06-01' },
  labs: [
    {
      analyte: 'potassium',
      value: 6.1,
      unit: 'mmol/L',
      takenOn: '2026-06-05',
      takenAt: '07:30',
      upperNormal: 5.1,
      hemolyzed: true,
    },
  ],
  conditions: ['edema'],
  medicines: ['raas-inhibitor'],
  raasChangedOn: '2026-06-01',
  supplements: ['creatine'],
  symptoms: ['weakness'],
  allergies: ['milk'],
  avoidedFoods: ['pork'],
  appetite: 'poor',
  weightLoss: { percent3Months: 3, percent6Months: 6 },
  muscleLoss: { percent3Months: 4 },
  intake: { energyKcal: 1500, proteinG: 50, littleForDays: 6 },
  foodAccess: 'no oven',
  goals: ['walk'],
  potassiumSteps: { causesCheckedOn: '2026-06-06', additivesCutOn: '2026-06-07' },
  lastScreenedOn: '2026-01-05',
  lastFullAssessmentOn: '2026-01-06',
};

describe('the assessment form', () => {
  test('loses nothing of the assessment before', () => {
    expect(assessmentFromJson(full).issues).toEqual([]);
    expect(assessmentOf(draftOf(full, today))).toEqual(full);
  });

  test('bags belong to their treatment: another setting begins without them', () => {
    const draft = draftOf(full, today);
    const moved = assessmentOf({ ...draft, fields: { ...draft.fields, setting: 'hemodialysis' } });
    expect(moved.treatment).toEqual({ setting: 'hemodialysis', place: 'in-center', startedOn: '2025-01-10' });
  });

  test.each([
    { setting: 'hemodialysis', place: 'home', sessionsPerWeek: 3, sessionHours: 4, ultrafiltrationLimitMlPerKgH: 10 },
    { setting: 'transplant', transplantedOn: '2024-02-01' },
    { setting: 'ckd-not-on-dialysis', conservative: true },
  ])('nor of a treatment: $setting', treatment => {
    const other = { ...full, treatment };
    expect(assessmentFromJson(other).issues).toEqual([]);
    expect(assessmentOf(draftOf(other, today))).toEqual(other);
  });

  test('a hemolyzed sample read from a file stays one', () => {
    const draft = draftOf(full, today);
    const [lab] = full.labs;
    expect(assessmentOf({ ...draft, labs: [labDraftOf(lab!)] }).labs).toEqual([lab]);
  });
});
