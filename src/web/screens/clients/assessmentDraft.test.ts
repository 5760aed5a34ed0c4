import { describe, expect, test } from 'vitest';
import { assessmentFromJson } from '#core/client/assessment/assessmentJson.ts';
import { assessmentOf, draftOf, labDraftOf, questionsByRow } from './assessmentDraft.ts';
import { conditions, medicines, supplements, symptoms } from './vocabulary.ts';

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
      lowerNormal: 3.5,
      upperNormal: 5.1,
      drawn: 'before-dialysis',
      hemolyzed: true,
      confirmed: true,
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
  weightLoss: { percent3Months: 3, percent6Months: 6, cause: 'wanted' },
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

  test('[CLT-96] neither age nor sex is filled in for anybody', () => {
    const blank = assessmentOf(draftOf(undefined, today));
    expect(blank).toMatchObject({ sex: '', age: {} });
    expect(assessmentFromJson(blank).issues.map(({ place }) => place.heading)).toEqual(['sex', 'age']);
  });

  test('a question stands at the row it is about, rows without a value left out', () => {
    const rows = [{ value: '' }, { value: '4.8' }, { value: ' ' }, { value: '1.4' }];
    const asked = { told: 'was it mmol/L?', answeredBy: { list: 'labs', at: 1 } } as const;
    expect([...questionsByRow(rows, 'labs', [asked])]).toEqual([[3, 'was it mmol/L?']]);
    expect([...questionsByRow(rows, 'weighings', [asked])]).toEqual([]);
    // Beside three results that are on record already.
    expect([...questionsByRow(rows, 'labs', [{ ...asked, answeredBy: { list: 'labs', at: 3 } }], 3)]).toEqual([[1, 'was it mmol/L?']]);
  });

  test.each(Object.entries({ conditions, medicines, supplements, symptoms }))(
    '%s: every key of the form is one of the format',
    (list, keys) => {
      const ticked = keys.map(([key]) => key);
      expect(assessmentFromJson({ ...full, [list]: ticked }).issues).toEqual([]);
    },
  );

  test('a hemolyzed sample read from a file stays one', () => {
    const draft = draftOf(full, today);
    const [lab] = full.labs;
    expect(assessmentOf({ ...draft, labs: [labDraftOf(lab!)] }).labs).toEqual([lab]);
  });
});
