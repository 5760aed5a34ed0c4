import { expect, test } from 'vitest';
import type { TakenFood } from '#core/client/assessment/amountsTaken.ts';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { cautionsFor } from '#core/client/cautions/cautions.ts';
import { problemStatements } from '#core/client/note/problemStatements.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { addedADay, eatenADay } from './eaten.ts';
import { potassiumCauses } from './potassiumCauses.ts';
import { wastingState } from './wastingState.ts';

const open = Number.POSITIVE_INFINITY;
const factsOf = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).facts;
const shake: TakenFood = { food: 'oral-supplement', energyKcal: 350, proteinG: 14, daysPerWeek: 7 };
const energyOf = (more: Partial<Assessment>) => eatenADay(factsOf(more), 'energyKcal');

// By hand: 350 × 3 / 7 = 150.
test('[CLT-83] what comes beside meals is the mean of a week; not known has no end, days not known no beginning', () => {
  const of = (...addedFoods: readonly TakenFood[]) => addedADay(factsOf({ addedFoods }), 'energyKcal');
  expect(of({ ...shake, daysPerWeek: 3 })).toEqual({ lo: 150, hi: 150 });
  expect(of({ ...shake, daysPerWeek: 3 }, { food: 'meal-on-dialysis', energyKcal: 700, daysPerWeek: 3 })).toEqual({ lo: 450, hi: 450 });
  expect(of({ food: 'oral-supplement', energyKcal: 350 })).toEqual({ lo: 0, hi: 350 });
  expect(of(shake, { food: 'tube-feeding', daysPerWeek: 7 })).toEqual({ lo: 350, hi: open });
  expect(of()).toBeUndefined();
});

test('[CLT-83] nothing is counted twice: in what was told, on top of it, or not asked', () => {
  const told = { energyKcal: 1400 };
  expect(energyOf({ intake: { ...told, holdsAdded: true }, addedFoods: [shake] })).toEqual({ lo: 1400, hi: 1400 });
  expect(energyOf({ intake: { ...told, holdsAdded: false }, addedFoods: [shake] })).toEqual({ lo: 1750, hi: 1750 });
  expect(energyOf({ intake: told, addedFoods: [shake] })).toEqual({ lo: 1400, hi: 1750 });
  expect(energyOf({ addedFoods: [shake] })).toEqual({ lo: 350, hi: open });
  expect(energyOf({ intake: told })).toEqual({ lo: 1400, hi: 1400 });
  expect(energyOf({})).toBeUndefined();
});

// 60 kg: 25 kcal/kg are 1500 kcal, 0.6 g/kg are 36 g.
test.each<[string, Assessment['intake'], readonly TakenFood[], string]>([
  ['too little by itself', { energyKcal: 1400, proteinG: 50 }, [], 'met'],
  ['enough with what comes on top', { energyKcal: 1400, proteinG: 50, holdsAdded: false }, [shake], 'not met'],
  ['too little, it is in it', { energyKcal: 1400, proteinG: 50, holdsAdded: true }, [shake], 'met'],
  ['not asked, and it decides', { energyKcal: 1400, proteinG: 50 }, [shake], 'not known'],
  ['not asked, and it does not decide', { energyKcal: 1600, proteinG: 50 }, [shake], 'not met'],
  ['too little either way', { energyKcal: 1000, proteinG: 50 }, [shake], 'met'],
  ['fed by tube, nothing told', undefined, [{ food: 'tube-feeding', energyKcal: 1800, proteinG: 70, daysPerWeek: 7 }], 'not met'],
  ['fed by tube, protein not told', undefined, [{ food: 'tube-feeding', energyKcal: 1800, daysPerWeek: 7 }], 'not known'],
])('[CLT-83] wasting looks at the whole of what is eaten: %s', (_, intake, addedFoods, state) => {
  const facts = factsOf({ weighings: [weighing('actual', 60)], ...(intake === undefined ? {} : { intake }), addedFoods });
  expect(wastingState(facts).criteria.groups.intake).toBe(state);
});

test('[CLT-83] whether they are in it is asked, beside the targets and where wasting is not ruled out', () => {
  const asked = { weighings: [weighing('actual', 58)], labs: [lab('albumin', 3.2, 'g/dL')], intake: { energyKcal: 1400, proteinG: 50 } };
  const open = factsOf({ ...asked, addedFoods: [shake] });
  expect(cautionsFor(open).find(({ id }) => id === 'added-in-intake')?.because).toBe('oral supplement');
  expect(JSON.stringify(wastingState(open).blocks)).toContain('have the supplements in them');
  const answered = factsOf({ ...asked, intake: { ...asked.intake, holdsAdded: true }, addedFoods: [shake] });
  expect(cautionsFor(answered).some(({ id }) => id === 'added-in-intake')).toBe(false);
});

// G3b, 70 kg: at least 25 × 70 = 1750 kcal.
test('[CLT-83] a problem is stated of the whole of what is eaten', () => {
  const of = (intake: Assessment['intake']) => {
    const assessment = clientWith({ stage: { value: 'G3b', on: '2026-01-10' }, ...(intake && { intake }), addedFoods: [shake] });
    return problemStatements(checkAssessment(assessment, today).facts, proposePrescription(assessment, today)).join(' ');
  };
  expect(of({ energyKcal: 1500, holdsAdded: false })).not.toContain('Energy eaten below need');
  expect(of({ energyKcal: 1300, holdsAdded: false })).toContain('1650 kcal a day against at least 1750 kcal');
  expect(of({ energyKcal: 1300 })).toContain('1300 to 1650 kcal a day');
});

test('[CLT-83] potassium in a supplement is looked at before food', () => {
  const [first] = potassiumCauses(factsOf({ addedFoods: [{ food: 'other', potassiumMg: 700, daysPerWeek: 7 }] }));
  expect(first?.onRecord).toBe('supplements or feeds with 700 mg of potassium a day');
});
