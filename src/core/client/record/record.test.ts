import { describe, expect, test } from 'vitest';
import type { Assessment, LabResult, Weighing } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, weighing } from '#core/client/assessment/clientFixture.ts';
import { clientDraftsFromJson, clientDraftsToJson, clientOfDrafts, draftsIdOf } from './clientDrafts.ts';
import form1 from './forms/clientDrafts.form1.json' with { type: 'json' };
import { evenPattern, typedPatternSchema } from './mealPattern.ts';
import { allergiesOf, type ClientRecord, contactsMade, currentAssessment, foodsToAvoid, newestAndSignedFor } from './record.ts';
import { hemodialysisClient, recordOf } from './recordFixture.ts';
import { recordSteps } from './upgradeRecord.ts';

const recordWith = (newest: Partial<Assessment>, more: Partial<ClientRecord> = {}): ClientRecord => ({
  ...recordOf(hemodialysisClient),
  assessments: [{ id: 'newest', assessment: clientWith({ on: '2026-06-01', ...newest }) }],
  prescriptions: [],
  ...more,
});

describe('the newest assessment with what came in since', () => {
  const potassium = lab('potassium', 4.6, 'mmol/L', '2026-05-30');
  const dry = weighing('dry', 70, '2026-05-30');
  const since = (labs: readonly LabResult[], weighings: readonly Weighing[] = [], more: object = { assessmentId: 'newest' }) => {
    const added = { id: 'r', on: '2026-06-10', labs: [...labs], weighings: [...weighings], ...more };
    return currentAssessment(recordWith({ labs: [potassium], weighings: [dry] }, { addedResults: [added] }))!.assessment;
  };

  test('[CLT-99] each result and each weight once, in whatever unit', () => {
    const phosphate = lab('phosphate', 5, 'mg/dL');
    expect(since([phosphate, { ...potassium, unit: 'mEq/L' }, phosphate]).labs).toEqual([potassium, phosphate]);
    const other = [weighing('dry', 71, '2026-05-30'), weighing('dry', 70, '2026-06-02'), weighing('actual', 70, '2026-05-30')];
    expect(since([], [dry, ...other, other[0]!]).weighings).toEqual([dry, ...other]);
    const inPounds: Weighing = { ...dry, weight: { value: 70 / 0.45359237, unit: 'lb' } };
    expect(since([], [inPounds]).weighings).toEqual([dry]);
  });

  test('[CLT-99] what was added to another assessment, or before this one, is not of it', () => {
    const later = lab('potassium', 5.1, 'mmol/L', '2026-06-09');
    expect(since([later], [], { assessmentId: 'earlier' }).labs).toEqual([potassium]);
    // Records of before did not tell to which it was added: from the day of the assessment on it is of it.
    expect(since([later], [], { on: '2026-06-01' }).labs).toEqual([potassium, later]);
    expect(since([later], [], { on: '2026-05-31' }).labs).toEqual([potassium]);
    expect(currentAssessment({ ...recordWith({}), assessments: [] })).toBeUndefined();
  });
});

test('[NOTE-3] who was told since the value, else since the assessment', () => {
  const contact = (cautionId: string, on: string) => ({ cautionId, told: 'the unit', on, at: `${on}T08:00:00.000Z` });
  const contacts = [contact('a', '2026-05-31'), contact('a', '2026-06-01'), contact('a', '2026-06-08'), contact('b', '2026-06-08')];
  const made = (caution: { id: string; since?: string }, record = recordWith({}, { contacts })) =>
    contactsMade(record, caution).map(({ on }) => on);
  expect(made({ id: 'a' })).toEqual(['2026-06-01', '2026-06-08']);
  expect(made({ id: 'a', since: '2026-06-08' })).toEqual(['2026-06-08']);
  expect(made({ id: 'a', since: '2026-05-01' })).toEqual(['2026-05-31', '2026-06-01', '2026-06-08']);
  expect(made({ id: 'a' }, { ...recordWith({}, { contacts }), assessments: [] })).toHaveLength(3);
});

test('[CLT-55] what forbids a food in the newest assessment or in the one signed for forbids it, once', () => {
  const [signed] = recordOf(hemodialysisClient).prescriptions;
  const assessments = [
    { id: 'newest', assessment: clientWith({ allergies: ['sesame'], avoidedFoods: ['pork'] }) },
    { id: 'between', assessment: clientWith({ allergies: ['egg'] }) },
    { id: 'signed', assessment: clientWith({ allergies: ['milk', 'sesame'], avoidedFoods: ['beef'] }) },
  ];
  const record = { ...recordWith({}), assessments, prescriptions: [{ ...signed!, assessmentId: 'signed' }] };
  expect(allergiesOf(record)).toEqual(['sesame', 'milk']);
  expect(foodsToAvoid(record)).toEqual(['pork', 'beef', 'sesame', 'milk']);
  expect(newestAndSignedFor({ ...record, prescriptions: [] })).toHaveLength(1);
  expect(newestAndSignedFor({ ...record, prescriptions: [{ ...signed!, assessmentId: 'newest' }] })).toHaveLength(1);
  expect(newestAndSignedFor({ ...record, assessments: [] })).toEqual([]);
});

describe('what lies half typed', () => {
  test('[CLT-55] is read whole, written with its form, and found by its client', () => {
    const { value, issues } = clientDraftsFromJson(form1);
    expect(issues).toEqual([]);
    expect(clientDraftsToJson(value!)).toEqual(form1);
    expect(form1.format).toBe(1);
    expect(clientDraftsFromJson({ ...form1, drafts: 'none' }).value).toBeUndefined();
    expect(clientOfDrafts(draftsIdOf('7c1f'))).toBe('7c1f');
    expect(clientOfDrafts('7c1f')).toBeUndefined();
  });
});

test('[CLT-55] a pattern of meals has 1 to 8 of 1 to 100 percent, named in at most 60 letters; the even one is a whole day', () => {
  const isTaken = (...meals: readonly { readonly name: string; readonly percent: number }[]) => typedPatternSchema.safeParse(meals).success;
  const meal = { name: 'lunch', percent: 30 };
  expect([isTaken(meal), isTaken(...Array.from({ length: 8 }, () => meal))]).toEqual([true, true]);
  expect([isTaken(), isTaken(...Array.from({ length: 9 }, () => meal))]).toEqual([false, false]);
  expect([1, 100, 0.9, 100.1].map(percent => isTaken({ ...meal, percent }))).toEqual([true, true, false, false]);
  expect(['x', 'x'.repeat(60), ' ', 'x'.repeat(61)].map(name => isTaken({ ...meal, name }))).toEqual([true, true, false, false]);
  expect(evenPattern.reduce((sum, { percent }) => sum + percent, 0)).toBe(100);
  expect(isTaken(...evenPattern)).toBe(true);
});

test('[CLT-55] a record of form 1 that is damaged goes on as it is, and is refused with the rest', () => {
  const [step] = recordSteps;
  for (const damaged of [
    { prescriptions: 'none' },
    {},
    { prescriptions: [7] },
    { prescriptions: [{ targets: 7 }] },
    { prescriptions: [null] },
  ])
    expect(step!(damaged)).toEqual(damaged);
  const ranged = (range: unknown) => ({ prescriptions: [{ targets: [{ item: 'protein', range }] }] });
  expect(step!(ranged({ lo: 60, hi: 80 }))).toEqual(ranged([60, 80]));
  expect(step!(ranged({ lo: 60, hi: Number.MAX_SAFE_INTEGER }))).toEqual(ranged([60, null]));
  expect(step!(ranged({ lo: 60 }))).toEqual(ranged([60, null]));
});
