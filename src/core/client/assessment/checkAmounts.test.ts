import { expect, test } from 'vitest';
import type { Session, TakenBinder, TakenFood, TakenPotassiumBinder } from './amountsTaken.ts';
import type { Assessment } from './assessment.ts';
import { assessmentFromJson } from './assessmentJson.ts';
import { checkAssessment } from './checkAssessment.ts';
import { clientWith, today } from './clientFixture.ts';

const issuesOf = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).issues;
const told = (more: Partial<Assessment>) => issuesOf(more).map(({ code, told: words }) => `${code}: ${words}`);
const treatedWith = (...sessions: readonly Session[]): Partial<Assessment> => ({
  treatment: { setting: 'hemodialysis', place: 'in-center', sessions },
});

test('[CLT-87] ordinary amounts raise no question, and neither does what is not known', () => {
  const ordinary: Partial<Assessment> = {
    ...treatedWith({ on: '2026-06-12', gainKg: 2.4, removedL: 2.6, hours: 4 }, { on: '2026-06-10' }),
    binders: [
      { binder: 'calcium-acetate', unitMg: 667, unitsPerDay: 6, unitsWith: { breakfast: 2, lunch: 2, dinner: 2, snack: 0 } },
      { binder: 'sevelamer', unitMg: 2400 },
      { binder: 'other' },
    ],
    potassiumBinders: [{ binder: 'patiromer', gPerDay: 8.4, daysPerWeek: 7 }, { binder: 'sodium-zirconium-cyclosilicate' }],
    addedFoods: [
      { food: 'oral-supplement', energyKcal: 350, proteinG: 20, sodiumMg: 200, potassiumMg: 250, phosphorusMg: 150, fluidMl: 237 },
      // The label of a powder rounds: 20 g protein are 80 kcal.
      { food: 'protein-powder', energyKcal: 75, proteinG: 20, daysPerWeek: 3 },
      { food: 'other' },
    ],
  };
  expect(issuesOf(ordinary)).toEqual([]);
});

test.each<[TakenBinder, string]>([
  [{ binder: 'sevelamer', unitMg: 0.8 }, 'unit-in-question: sevelamer, in one 0.8 mg: were grams meant?'],
  [{ binder: 'sevelamer', unitMg: 0 }, 'impossible-value: sevelamer, in one 0 mg cannot be'],
  [{ binder: 'sevelamer', unitMg: -800 }, 'impossible-value'],
  [{ binder: 'sevelamer', unitMg: 80_000 }, 'impossible-value'],
  [{ binder: 'sevelamer', unitsPerDay: 0 }, 'impossible-value: sevelamer, number 0 a day cannot be'],
  [{ binder: 'sevelamer', unitsPerDay: 41 }, 'impossible-value'],
  [{ binder: 'sevelamer', unitsWith: { dinner: -1 } }, 'impossible-value: sevelamer with dinner -1 at once'],
  [{ binder: 'sevelamer', unitsWith: { dinner: 16 } }, 'impossible-value'],
  [{ binder: 'sevelamer', unitsPerDay: 4, unitsWith: { dinner: 5 } }, 'contradiction: sevelamer: 4 a day, and 5 with the meals'],
  [
    { binder: 'sevelamer', unitsPerDay: 6, unitsWith: { breakfast: 1, lunch: 1, dinner: 1, snack: 0 } },
    'contradiction: sevelamer: 6 a day, and 3 with the meals',
  ],
  [{ binder: 'sevelamer', unitsWith: { breakfast: 0, lunch: 0, dinner: 0, snack: 0 } }, 'value-in-question: sevelamer: 0 with every meal'],
])('[CLT-87] a binder %j: %s', (binder, words) => {
  expect(told({ binders: [binder] })).toEqual([expect.stringContaining(words)]);
});

test.each<[TakenPotassiumBinder, string]>([
  [{ binder: 'patiromer', gPerDay: 8400 }, 'unit-in-question: patiromer 8400 g a day: was it mg?'],
  [{ binder: 'patiromer', gPerDay: 0 }, 'impossible-value'],
  [{ binder: 'patiromer', gPerDay: 61 }, 'impossible-value'],
  [{ binder: 'patiromer', daysPerWeek: 8 }, 'impossible-value: patiromer, days 8 a week'],
])('[CLT-87] a potassium binder %j: %s', (taken, words) => {
  expect(told({ potassiumBinders: [taken] })).toEqual([expect.stringContaining(words)]);
});

test.each<[TakenFood, string]>([
  [{ food: 'tube-feeding', energyKcal: 7500 }, 'unit-in-question: tube feeding, energy 7500 kcal a day: was it kilojoules?'],
  [{ food: 'tube-feeding', energyKcal: -1 }, 'impossible-value'],
  [{ food: 'tube-feeding', proteinG: 301 }, 'impossible-value'],
  [{ food: 'tube-feeding', sodiumMg: 10_001 }, 'impossible-value'],
  [{ food: 'tube-feeding', potassiumMg: 10_001 }, 'impossible-value'],
  [{ food: 'tube-feeding', phosphorusMg: 5001 }, 'impossible-value'],
  [{ food: 'tube-feeding', calciumMg: 5001 }, 'impossible-value'],
  [{ food: 'tube-feeding', fluidMl: 6001 }, 'impossible-value'],
  [{ food: 'tube-feeding', daysPerWeek: 0 }, 'impossible-value'],
  [{ food: 'protein-powder', energyKcal: 100, proteinG: 50 }, 'contradiction: protein powder: 50 g protein alone are 200 kcal'],
])('[CLT-87] beside meals %j: %s', (food, words) => {
  expect(told({ addedFoods: [food] })).toEqual([expect.stringContaining(words)]);
});

test.each<[Session, string]>([
  [{ on: '2026-06-12', gainKg: 2400 }, 'unit-in-question: dialysis treatment of 2026-06-12, gain 2400 kg: were grams meant?'],
  [{ on: '2026-06-12', gainKg: 16 }, 'impossible-value'],
  [{ on: '2026-06-12', removedL: 2600 }, 'unit-in-question: dialysis treatment of 2026-06-12, fluid taken off 2600 L: was it mL?'],
  [{ on: '2026-06-12', removedL: -1 }, 'impossible-value'],
  [{ on: '2026-06-12', hours: 240 }, 'unit-in-question: dialysis treatment of 2026-06-12, length 240 h: was it minutes?'],
  [{ on: '2026-06-12', hours: 0 }, 'impossible-value'],
  [{ on: '2026-06-31' }, 'not-a-day: dialysis treatment'],
  [{ on: '2026-06-16' }, 'from-the-future: dialysis treatment'],
  [{ on: '1950-01-01' }, 'wrong-order: dialysis treatment'],
])('[CLT-87] a treatment %j: %s', (session, words) => {
  expect(told(treatedWith(session))).toEqual([expect.stringContaining(words)]);
});

test('[CLT-87] 500 rows and a binder that is none of the list are refused with their place', () => {
  const rows = <Row>(row: Row) => Array.from({ length: 500 }, () => row);
  const many = { ...clientWith(), binders: rows({ binder: 'sevelamer' }), addedFoods: rows({ food: 'other' }) };
  expect(assessmentFromJson(many).issues.map(({ place }) => place)).toEqual([{ heading: 'addedFoods' }, { heading: 'binders' }]);
  const unknown = { ...clientWith(), binders: [{ binder: 'chalk' }] };
  expect(assessmentFromJson(unknown).issues).toMatchObject([{ place: { heading: 'binders[0].binder' } }]);
});
