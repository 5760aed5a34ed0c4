import { describe, expect, test } from 'vitest';
import type { Assessment, LabResult } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import { addDays } from '#core/quantity/calendarDay.ts';
import { phosphateState } from './phosphateState.ts';
import { potassiumState, potassiumStep } from './potassiumState.ts';

const factsOf = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).facts;
const hemodialysis = { treatment: { setting: 'hemodialysis', place: 'in-center' } } as const;
const potassium = (value: number, on = '2026-06-10', more: Partial<LabResult> = {}) => lab('potassium', value, 'mmol/L', on, more);
const hemolyzed = { hemolyzed: true } as const;

describe('potassium at the ends of its range', () => {
  const stateOf = (labs: readonly LabResult[], more: Partial<Assessment> = {}) => potassiumState(factsOf({ ...more, labs }));
  const kindOf = (labs: readonly LabResult[], more: Partial<Assessment> = {}) => stateOf(labs, more).kind;

  // Facts 3.4, 4.2: 3.5 to 5.0, high from over 5.5; on hemodialysis to 5.5.
  test.each([
    [3.4, {}, {}, 'low'],
    [3.5, {}, {}, 'in-range'],
    [5, {}, {}, 'in-range'],
    [5.1, {}, {}, 'once-above'],
    [5.5, {}, {}, 'once-above'],
    [5.6, {}, {}, 'high'],
    [5.5, hemodialysis, {}, 'in-range'],
    [5.6, hemodialysis, {}, 'high'],
    [3.7, {}, { lowerNormal: 3.8 }, 'low'],
    [3.8, {}, { lowerNormal: 3.8 }, 'in-range'],
    [5.3, {}, { upperNormal: 5.3 }, 'in-range'],
    [5.6, {}, { upperNormal: 5.8 }, 'high'],
    [5.5, hemodialysis, { drawn: 'after-dialysis' }, 'unknown'],
  ] as const)('[CLT-11] %d mmol/L, %o, %o: %s', (value, more, marks, kind) => {
    expect(kindOf([potassium(value, '2026-06-10', marks)], more)).toBe(kind);
  });

  test('[CLT-11] a day before counts as above where each of its results is above', () => {
    expect(kindOf([potassium(5.2), potassium(5.3, '2026-05-10'), potassium(5.1, '2026-05-10')])).toBe('high');
    expect(kindOf([potassium(5.2), potassium(5.3, '2026-05-10'), potassium(4.9, '2026-05-10')])).toBe('once-above');
    expect(kindOf([potassium(5.2), potassium(5, '2026-05-10')])).toBe('once-above');
  });

  test('[CLT-11] drawn on the day of a RAAS change it is not in range, on the day after it is (care rules 1)', () => {
    expect(kindOf([potassium(4.6)], { raasChangedOn: '2026-06-10' })).toBe('unknown');
    expect(kindOf([potassium(4.6)], { raasChangedOn: '2026-06-09' })).toBe('in-range');
  });

  test('[CLT-11] results of one day contradict each other where they say different things and no hours order them', () => {
    const at = (value: number, takenAt?: string) => potassium(value, '2026-06-10', takenAt === undefined ? {} : { takenAt });
    expect(stateOf([at(4.6), at(5.8)])).toMatchObject({
      kind: 'unknown',
      why: 'Potassium results of 2026-06-10 contradict each other: 5.8 and 4.6 mmol/L.',
    });
    expect(stateOf([at(4.6), at(4.8)])).toMatchObject({ kind: 'in-range', lab: { value: 4.8 } });
    expect(kindOf([at(4.6, '12:00'), at(5.8)])).toBe('unknown');
    // Where one hour is missing nobody knows which was last: the highest.
    expect(stateOf([at(4.6, '12:00'), at(4.8)])).toMatchObject({ lab: { value: 4.8 } });
    expect(stateOf([at(4.6, '08:00'), at(4.8, '12:00'), at(4.7, '10:00')])).toMatchObject({ kind: 'in-range', lab: { value: 4.8 } });
    expect(stateOf([at(4.8, '08:00'), at(4.6, '12:00')])).toMatchObject({ kind: 'in-range', lab: { value: 4.6 } });
  });

  // Care rules 2: a hemolyzed potassium is an upper bound.
  test.each([
    ['2026-06-12', 4.8, 'unknown'],
    ['2026-06-10', 4.8, 'unknown'],
    ['2026-06-09', 4.8, 'high'],
    ['2026-06-12', 5, 'unknown'],
    ['2026-06-12', 5.1, 'high'],
  ])('[CLT-11] 5.8 on 2026-06-10 and a hemolyzed one on %s of %d: %s', (on, value, kind) => {
    expect(kindOf([potassium(5.8), potassium(value, on, hemolyzed)])).toBe(kind);
  });

  test('[CLT-11] where none counts it is said why', () => {
    expect(stateOf([potassium(4.6, '2026-06-10', hemolyzed)])).toMatchObject({
      why: 'potassium 4.6 mmol/L (on 2026-06-10, 5 days old, hemolyzed) does not count as in range nor as low.',
      whatToCheck: 'A new potassium result.',
    });
    expect(stateOf([potassium(4.6, '2026-01-01'), lab('sodium', 138, 'mmol/L', '2026-01-02')])).toMatchObject({
      why: 'There is no potassium result of the last 100 days. potassium 4.6 mmol/L (on 2026-01-01, 165 days old) is too old.',
      whatToCheck: 'A potassium result.',
    });
    expect(stateOf([lab('sodium', 138, 'mmol/L')])).toMatchObject({ why: 'There is no potassium result of the last 100 days.' });
  });
});

// Care rules 1: "causes checked" counts for results up to its day; facts 3.4: additives first, then a result that is still high.
test.each([
  [undefined, undefined, 'check-causes'],
  ['2026-06-09', undefined, 'check-causes'],
  ['2026-06-10', undefined, 'cut-additives'],
  ['2026-06-10', '2026-06-10', 'wait-for-result'],
  ['2026-06-10', '2026-06-09', 'limit'],
] as const)('[CLT-12] a high potassium of 2026-06-10, causes checked %s, additives cut %s: %s', (causesCheckedOn, additivesCutOn, step) => {
  const steps = {
    ...(causesCheckedOn === undefined ? {} : { causesCheckedOn }),
    ...(additivesCutOn === undefined ? {} : { additivesCutOn }),
  };
  const stepOf = (more: Partial<Assessment>) => {
    const facts = factsOf({ ...more, potassiumSteps: steps, labs: [potassium(5.8)] });
    return potassiumStep(facts, facts.labs[0]!);
  };
  expect(stepOf({})).toBe(step);
  expect(stepOf(hemodialysis)).toBe(step === 'check-causes' ? step : 'limit');
});

describe('phosphate at its bounds', () => {
  const phosphate = (value: number, on = '2026-06-10', more: Partial<LabResult> = {}) => lab('phosphate', value, 'mg/dL', on, more);
  const stateOf = (...labs: readonly LabResult[]) => phosphateState(factsOf({ ...hemodialysis, labs }));

  test('[CLT-14] 2.5 mg/dL is in range, or what the laboratory says; 60 days old it still counts', () => {
    expect([2.4, 2.5].map(value => stateOf(phosphate(value)).kind)).toEqual(['low', 'in-range']);
    expect(stateOf(phosphate(2.6, '2026-06-10', { lowerNormal: 2.7 })).kind).toBe('low');
    expect(stateOf(phosphate(2.7, '2026-06-10', { lowerNormal: 2.7 })).kind).toBe('in-range');
    expect(stateOf(phosphate(4, addDays(today, -60))).kind).toBe('in-range');
    expect(stateOf(phosphate(4, addDays(today, -61)))).toEqual({
      kind: 'missing',
      why: 'There is no phosphate result of the last 60 days. phosphate 4 mg/dL (on 2026-04-15, 61 days old) is too old.',
    });
    expect(stateOf()).toEqual({ kind: 'missing', why: 'There is no phosphate result of the last 60 days.' });
  });

  test('[CLT-14] three that stand still are not rising', () => {
    const three = (last: number, second: number, first: number) =>
      stateOf(phosphate(last), phosphate(second, '2026-05-10'), phosphate(first, '2026-04-10')).kind;
    expect(three(5.9, 5.2, 5.1)).toBe('persistent');
    expect(three(5.9, 5.2, 5.2)).toBe('once-above');
    expect(stateOf(phosphate(5.9), phosphate(5.2, '2026-05-10')).kind).toBe('once-above');
  });

  // 9 times an upper normal of 65 pg/mL (facts 4.2).
  test('[CLT-14] PTH is high over 585 pg/mL', () => {
    const pthHigh = (value: number) => stateOf(phosphate(4), lab('pth', value, 'pg/mL'));
    expect([pthHigh(585), pthHigh(586)]).toMatchObject([{ pthHigh: false }, { pthHigh: true }]);
  });
});
