import { expect, test } from 'vitest';
import type { AssessmentJson } from '#core/client/assessment/assessment.ts';
import { clientWith } from '#core/client/assessment/clientFixture.ts';
import { assessmentOf, stillMissing } from './assessmentOf.ts';
import { typedAssessment } from './typedAssessment.ts';
import { blankBinder, blankFood, blankPotassiumBinder, blankSession } from './typedTaken.ts';

const today = '2026-06-15';
const hemodialysis = { setting: 'hemodialysis', place: 'in-center' } as const;
const begun = typedAssessment(clientWith({ treatment: hemodialysis }), today);

test('[CLT-42] a number that is not typed stays out: neither a meal nor an amount becomes 0', () => {
  const kept = assessmentOf({
    ...begun,
    binders: [{ ...blankBinder, name: 'calcium-acetate', unitMg: '667', dinner: '2' }],
    potassiumBinders: [{ ...blankPotassiumBinder, name: 'patiromer' }],
    addedFoods: [{ ...blankFood, name: 'other', words: ' broth ', proteinG: '0' }],
    sessions: [{ ...blankSession(today), gainKg: '2.4' }],
  });
  expect(kept).toMatchObject({
    binders: [{ binder: 'calcium-acetate', unitMg: 667, unitsWith: { dinner: 2 } }],
    potassiumBinders: [{ binder: 'patiromer' }],
    addedFoods: [{ food: 'other', words: 'broth', proteinG: 0 }],
    treatment: { ...hemodialysis, sessions: [{ on: today, gainKg: 2.4 }] },
  } satisfies Partial<AssessmentJson>);
  expect(Object.keys(kept?.binders?.[0]?.unitsWith ?? {})).toEqual(['dinner']);
});

test('[CLT-42] rows in which nothing is typed are none, and lists without a row are left out', () => {
  const blank = { ...begun, binders: [blankBinder], addedFoods: [blankFood], sessions: [blankSession(today)] };
  expect(assessmentOf(blank)).toEqual(assessmentOf(begun));
  for (const list of ['binders', 'potassiumBinders', 'addedFoods']) expect(assessmentOf(begun)).not.toHaveProperty(list);
  expect(stillMissing(blank)).toEqual([]);
});

test('[CLT-42] a dose without a name is not dropped: the name is asked for', () => {
  const nameless = {
    ...begun,
    binders: [{ ...blankBinder, unitMg: '800' }],
    potassiumBinders: [{ ...blankPotassiumBinder, gPerDay: '10' }],
    addedFoods: [{ ...blankFood, words: 'a shake' }],
  };
  expect(stillMissing(nameless)).toEqual([
    'choose which phosphate binder it is',
    'choose which potassium binder it is',
    'choose what is taken beside meals',
  ]);
});

test('[CLT-42] whether the intake has them in it is yes, no or not asked', () => {
  const answered = (holdsAdded: string) => assessmentOf({ ...begun, fields: { ...begun.fields, holdsAdded } })?.intake;
  expect([answered('yes'), answered('no'), answered('')]).toEqual([{ holdsAdded: true }, { holdsAdded: false }, undefined]);
});

test('[CLT-42] treatments go with hemodialysis alone', () => {
  const typed = { ...begun, sessions: [{ ...blankSession(today), hours: '4' }] };
  const moved = assessmentOf({ ...typed, fields: { ...typed.fields, setting: 'peritoneal-dialysis' } });
  expect(moved?.treatment).toEqual({ setting: 'peritoneal-dialysis', method: 'capd' });
});
