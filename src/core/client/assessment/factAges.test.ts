import { describe, expect, test } from 'vitest';
import { addDays } from '#core/quantity/calendarDay.ts';
import type { Assessment } from './assessment.ts';
import { checkAssessment } from './checkAssessment.ts';
import { ageWords, labWords, weightWords } from './clientFacts.ts';
import { clientWith, lab, today, weighing } from './clientFixture.ts';
import { type AgedFact, ageLimitDays, isInDate, latestLowest } from './factAges.ts';
import { notUsed } from './notUsed.ts';

const factsOf = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).facts;
const hemodialysis: Partial<Assessment> = { treatment: { setting: 'hemodialysis', place: 'in-center' } };
const peritoneal: Partial<Assessment> = { treatment: { setting: 'peritoneal-dialysis', method: 'capd' } };
const transplant = (days: number): Partial<Assessment> => ({
  treatment: { setting: 'transplant', transplantedOn: addDays(today, -days) },
});
const stage = (value: 'G3a' | 'G4' | 'G5'): Partial<Assessment> => ({ stage: { value, on: '2026-01-10' } });

// Care rules 1, the table. Off dialysis in G3, G4, G5 and without a stage; a transplant of years and one of the first 3 months.
describe('for how many days a fact counts: hemodialysis, peritoneal dialysis, G3, G4, G5, no stage, transplant, new transplant', () => {
  const clients = [hemodialysis, peritoneal, stage('G3a'), stage('G4'), stage('G5'), {}, transplant(93), transplant(92)];
  const quick = [45, 60, 100, 100, 100, 100, 45, 14] as const;
  const mineral = [60, 60, 400, 200, 100, 100, 100, 14] as const;
  const protein = [60, 100, 200, 200, 200, 200, 200, 200] as const;
  test.each<[AgedFact, ...(readonly number[])]>([
    ['potassium', ...quick],
    ['bicarbonate', ...quick],
    ['sodium', ...quick],
    ['ureaNitrogen', ...quick],
    ['phosphate', ...mineral],
    ['calcium', ...mineral],
    ['correctedCalcium', ...mineral],
    ['ionizedCalcium', ...mineral],
    ['magnesium', ...mineral],
    ['albumin', ...protein],
    ['prealbumin', ...protein],
    ['cholesterol', ...protein],
    ['pth', 200, 200, 400, 400, 200, 200, 400, 400],
    ['hba1c', 200, 200, 200, 200, 200, 200, 200, 200],
    ['weight', 14, 45, 100, 100, 100, 100, 45, 45],
    ['dry-weight', 60, 60, 60, 60, 60, 60, 60, 60],
    ['urine', 100, 100, 200, 200, 200, 200, 100, 100],
    ['intake', 45, 45, 100, 100, 100, 100, 45, 45],
    ['assessment', 100, 100, 400, 400, 400, 400, 100, 100],
    ['ferritin', 100, 100, 100, 100, 100, 100, 100, 100],
  ])('[CLT-70] %s: %d, %d, %d, %d, %d, %d, %d, %d', (fact, ...days) => {
    expect(clients.map(client => ageLimitDays(factsOf(client), fact))).toEqual(days);
  });

  test('[CLT-70] it counts on its last day and not on the next', () => {
    const counts = (days: number) => isInDate(factsOf(hemodialysis), 'potassium', addDays(today, -days));
    expect([counts(45), counts(46)]).toEqual([true, false]);
    const codes = (days: number) =>
      checkAssessment({ ...clientWith(hemodialysis), on: addDays(today, -days) }, today).issues.map(({ code }) => code);
    expect([codes(100), codes(101)]).toEqual([[], ['assessment-too-old']]);
  });

  test('[CLT-70] without a result there is no lowest', () => {
    expect(latestLowest(factsOf({}), 'potassium')).toBeUndefined();
  });
});

describe('what stands on record and is not used', () => {
  const unused = (more: Partial<Assessment>) => notUsed(factsOf(more)).map(({ what, why }) => `${what}: ${why}`);
  const potassium = (on: string, more: Parameters<typeof lab>[4] = {}) => lab('potassium', 5.2, 'mmol/L', on, more);

  test('[CLT-70] of each analyte the newest result where it is too old; older ones are history', () => {
    const labs = [potassium('2026-04-30'), potassium('2026-03-01'), lab('hba1c', 7, '%', '2026-06-01'), lab('hba1c', 8, '%', '2025-01-01')];
    expect(unused({ ...hemodialysis, weighings: [], labs })).toEqual([
      'potassium 5.2 mmol/L (on 2026-04-30, 46 days old): potassium counts for 45 days',
    ]);
    expect(unused({ ...hemodialysis, weighings: [], labs: [potassium('2026-05-01')] })).toEqual([]);
  });

  test('[CLT-70] every marked potassium in date, and no other analyte for a mark', () => {
    const labs = [
      potassium('2026-06-10'),
      potassium('2026-06-05', { hemolyzed: true }),
      potassium('2026-06-01', { drawn: 'after-dialysis' }),
      potassium('2026-03-01', { hemolyzed: true }),
      lab('sodium', 138, 'mmol/L', '2026-06-10', { hemolyzed: true }),
      lab('sodium', 138, 'mmol/L', '2026-06-09', { drawn: 'after-dialysis' }),
    ];
    expect(unused({ ...hemodialysis, weighings: [], labs })).toEqual([
      'potassium 5.2 mmol/L (on 2026-06-05, 10 days old, hemolyzed): a hemolyzed sample is an upper bound: it sets no limit and is not in range',
      'potassium 5.2 mmol/L (on 2026-06-01, 14 days old, after dialysis): after dialysis it is not in range, not low, and lifts no alarm',
    ]);
  });

  test('[CLT-70] the newest weight of each kind, urine, and what was eaten', () => {
    const weighings = [weighing('actual', 70.04, '2026-02-01'), weighing('actual', 71, '2026-01-01'), weighing('dry', 68, '2026-04-01')];
    expect(unused({ weighings })).toEqual([
      'dry weight 68 kg (on 2026-04-01, 75 days old): it counts for 60 days',
      'actual weight 70 kg (on 2026-02-01, 134 days old): it counts for 100 days',
    ]);
    expect(unused({ weighings: [weighing('actual', 70), weighing('usual', 80, '2020-01-01')] })).toEqual([]);
    expect(unused({ urineMlPerDay: { value: 900, on: '2025-10-01' } })).toEqual([
      'urine 900 mL a day (on 2025-10-01, 257 days old): it counts for 200 days',
    ]);
    expect(unused({ urineMlPerDay: { value: 900, on: '2026-06-01' } })).toEqual([]);
    const eaten = 'appetite and intake (on 2026-01-01, 165 days old): they count for 100 days';
    expect(unused({ on: '2026-01-01', appetite: 'good' })).toEqual([eaten]);
    expect(unused({ on: '2026-01-01', intake: { proteinG: 60 } })).toEqual([eaten]);
    expect(unused({ on: '2026-01-01' })).toEqual([]);
    expect(unused({ appetite: 'good', intake: { proteinG: 60 } })).toEqual([]);
  });

  test('[CLT-70] a clinic’s own age of one day is read as one', () => {
    const own = [{ id: 'age.weight.ckd-not-on-dialysis', value: 1, by: 'A. N.', on: '2026-01-01' }] as const;
    expect(notUsed(checkAssessment(clientWith(), today, own).facts)[0]?.why).toBe('it counts for 1 day');
  });
});

describe('a fact as it is read', () => {
  test('[CLT-70] its age', () => {
    expect(['2026-06-15', '2026-06-14', '2026-06-13'].map(day => ageWords(day, today))).toEqual([
      'on 2026-06-15, today',
      'on 2026-06-14, 1 day old',
      'on 2026-06-13, 2 days old',
    ]);
  });

  test('[CLT-70] a result with its marks, as it was entered', () => {
    const words = (...labs: Assessment['labs']) => {
      const { facts } = checkAssessment(clientWith({ ...hemodialysis, labs }), today);
      return [...facts.labs, ...facts.questioned].map(one => labWords(one, today));
    };
    expect(words(lab('potassium', 5.123456, 'mEq/L', today, { drawn: 'before-dialysis', hemolyzed: true }))).toEqual([
      'potassium 5.123 mEq/L (on 2026-06-15, today, before dialysis, hemolyzed)',
    ]);
    expect(words(lab('spKtV', 1.4, '{ratio}', today))).toEqual(['spKt/V 1.4 (on 2026-06-15, today)']);
    expect(words(lab('glucose', 40, 'mmol/L', today))[0]).toBe('glucose 40 mmol/L (on 2026-06-15, today, in question)');
  });

  test('[CLT-70] a weight, in pounds with kg beside them', () => {
    expect(weightWords({ kg: 70.25, entered: { value: 70.25, unit: 'kg' } })).toBe('70.3 kg');
    expect(weightWords({ kg: 48.988, entered: { value: 108.04, unit: 'lb' } })).toBe('108 lb (49 kg)');
  });
});
