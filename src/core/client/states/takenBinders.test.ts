import { expect, test } from 'vitest';
import type { TakenBinder, TakenPotassiumBinder } from '#core/client/assessment/amountsTaken.ts';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import { calciumAbove } from './calciumAbove.ts';
import { phosphateCauses } from './phosphateCauses.ts';
import { potassiumBinderSodium } from './potassiumBinding.ts';
import { binderCalcium, doseWords } from './takenBinders.ts';

const factsOf = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).facts;
const calciumOf = (...binders: readonly TakenBinder[]) => {
  const calcium = binderCalcium(factsOf({ binders }));
  return calcium === undefined ? undefined : [Math.round(calcium.lo), Math.round(calcium.hi)];
};
const open = Number.POSITIVE_INFINITY;
const acetate = { binder: 'calcium-acetate', unitMg: 667 } as const;
const whole = { breakfast: 2, lunch: 1, dinner: 3, snack: 0 };

// 667 mg × 25.339 % = 169.0 mg in each; 500 mg carbonate × 40.044 % = 200.2 mg.
test('[CLT-80] calcium of a day: by the day, by meals, of several binders', () => {
  expect(calciumOf({ ...acetate, unitsPerDay: 6 })).toEqual([1014, 1014]);
  expect(calciumOf({ ...acetate, unitsWith: whole })).toEqual([1014, 1014]);
  expect(calciumOf({ ...acetate, unitsPerDay: 3 }, { binder: 'calcium-carbonate', unitMg: 500, unitsPerDay: 3 })).toEqual([1108, 1108]);
});

test('[CLT-80] what is not known leaves the end open, and is never 0: strength, number, a meal, another binder', () => {
  expect(calciumOf({ ...acetate })).toEqual([0, open]);
  expect(calciumOf({ binder: 'calcium-acetate', unitsPerDay: 6 })).toEqual([0, open]);
  expect(calciumOf({ ...acetate, unitsWith: { dinner: 3 } })).toEqual([507, open]);
  expect(calciumOf({ binder: 'other', words: 'a powder', unitMg: 500, unitsPerDay: 3 })).toEqual([0, open]);
  expect(binderCalcium(factsOf({ medicines: ['phosphate-binder'] }))).toEqual({ lo: 0, hi: open });
  expect(binderCalcium(factsOf({}))).toBeUndefined();
});

test.each(['sevelamer', 'lanthanum', 'sucroferric-oxyhydroxide', 'ferric-citrate', 'aluminum-hydroxide', 'magnesium-carbonate'] as const)(
  '[CLT-80] %s holds no calcium, dose or not',
  binder => {
    expect(calciumOf({ binder })).toEqual([0, 0]);
    expect(calciumOf({ binder, unitMg: 800, unitsPerDay: 6 })).toEqual([0, 0]);
  },
);

test('[CLT-81] high calcium is told with the binder that may hold it, and not with one that holds none', () => {
  const labs = [lab('calcium', 11, 'mg/dL'), lab('albumin', 4.2, 'g/dL')];
  const of = (more: Partial<Assessment>) => calciumAbove(factsOf({ labs, ...more }));
  expect(of({ binders: [acetate] })).toContain('with calcium acetate');
  expect(of({ binders: [{ binder: 'sevelamer' }] })).toBeUndefined();
  expect(of({ binders: [{ binder: 'sevelamer' }], medicines: ['phosphate-binder'] })).toBeUndefined();
  expect(of({ addedFoods: [{ food: 'oral-supplement', calciumMg: 300, daysPerWeek: 7 }] })).toContain(
    'with calcium in supplements or feeds',
  );
});

test('[CLT-81] a binder by name stands among what is looked at for a high phosphate', () => {
  expect(phosphateCauses(factsOf({ binders: [{ binder: 'sevelamer' }] }))).toMatchObject([{ onRecord: 'sevelamer' }]);
  expect(phosphateCauses(factsOf({ addedFoods: [{ food: 'protein-powder' }] }))).toMatchObject([{ asCause: 'protein powder' }]);
});

test('[CLT-80] a dose in words says what is not known', () => {
  expect(doseWords({ ...acetate, unitsPerDay: 6, unitsWith: { dinner: 4, breakfast: 2 } })).toBe(
    'calcium acetate, 667 mg, 6 a day (2 with breakfast, 4 with dinner)',
  );
  expect(doseWords({ binder: 'other', words: 'a powder' })).toBe('a powder, strength not known, number not known');
});

// 400 mg sodium in 5 g cyclosilicate, 1500 mg in 15 g polystyrene sulfonate (US labels, as quoted). 10 g × 80 = 800; on 3.5 days a week 400.
test.each<[TakenPotassiumBinder, number, number]>([
  [{ binder: 'sodium-zirconium-cyclosilicate', gPerDay: 5, daysPerWeek: 7 }, 400, 400],
  [{ binder: 'sodium-zirconium-cyclosilicate', gPerDay: 10, daysPerWeek: 3.5 }, 400, 400],
  [{ binder: 'sodium-zirconium-cyclosilicate', gPerDay: 10 }, 0, 800],
  [{ binder: 'sodium-zirconium-cyclosilicate', daysPerWeek: 7 }, 0, open],
  [{ binder: 'sodium-polystyrene-sulfonate', gPerDay: 15, daysPerWeek: 7 }, 1500, 1500],
  [{ binder: 'patiromer' }, 0, 0],
])('[CLT-82] sodium of %j: %d to %d mg a day', (taken, lo, hi) => {
  expect(potassiumBinderSodium(factsOf({ potassiumBinders: [taken] }))).toEqual({ lo, hi });
});
