import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { addDays } from '#core/quantity/calendarDay.ts';
import { refeedingSigns } from './refeeding.ts';
import { weightLoss } from './weightLoss.ts';

const factsOf = (more: Partial<Assessment>) => checkAssessment(clientWith({ weighings: [], ...more }), today).facts;
const lossOf = (more: Partial<Assessment>) => weightLoss(factsOf(more));
const ago = (days: number) => addDays(today, -days);

describe('weight loss from recorded weights (care rules 3)', () => {
  const percents = (...weighings: Assessment['weighings']) => {
    const { percent3Months, percent6Months } = lossOf({ weighings });
    return [percent3Months, percent6Months].map(percent => percent?.toFixed(1));
  };

  // (68 − 62) / 68 = 8.8 %; (68 − 61) / 68 = 10.3 %; (66 − 60) / 66 = 9.1 %; (62 − 68) / 62 = −9.7 %.
  test.each([
    ['80 days ago', [weighing('actual', 68, ago(80))], '8.8', '8.8'],
    ['92 days ago', [weighing('actual', 68, ago(92))], '8.8', '8.8'],
    ['93 days ago', [weighing('actual', 68, ago(93))], undefined, '8.8'],
    ['183 days ago', [weighing('actual', 68, ago(183))], undefined, '8.8'],
    ['184 days ago', [weighing('actual', 68, ago(184))], undefined, undefined],
    ['the heaviest of the window', [weighing('actual', 66, ago(20)), weighing('actual', 68, ago(80))], '8.8', '8.8'],
    ['the lighter of two of today', [weighing('actual', 61, today), weighing('actual', 68, ago(80))], '10.3', '10.3'],
    ['another kind', [weighing('dry', 68, ago(80))], undefined, undefined],
    ['the kind that lost more', [weighing('actual', 64, ago(80)), weighing('dry', 60, today), weighing('dry', 66, ago(80))], '9.1', '9.1'],
    ['a gain', [weighing('actual', 56, ago(80))], '-10.7', '-10.7'],
  ] as const)('[CLT-13] 62 kg today, %s', (_, earlier, three, six) => {
    expect(percents(weighing('actual', 62, today), ...earlier)).toEqual([three, six]);
  });

  test('[CLT-13] water between two treatments is no loss', () => {
    expect(percents(weighing('before-dialysis', 62, today), weighing('before-dialysis', 70, ago(80)))).toEqual([undefined, undefined]);
  });

  test('[CLT-13] the greater of what was typed and what the weights show', () => {
    const weighings = [weighing('actual', 62, today), weighing('actual', 68, ago(80))];
    expect(lossOf({ weighings, weightLoss: { percent3Months: 4 } }).percent3Months).toBeCloseTo(8.82, 2);
    expect(lossOf({ weighings, weightLoss: { percent3Months: 12 } }).percent3Months).toBe(12);
    expect(lossOf({ weightLoss: { percent6Months: 3 } })).toEqual({ percent6Months: 3, isLost: false, isOpen: false, isOld: false });
    expect(lossOf({})).toEqual({ isLost: false, isOpen: false, isOld: false });
  });

  // Facts 9.3: 5 % in 3 months or 10 % in 6. What was wanted, or fluid, is none; what nobody was asked about is open.
  test.each([
    [{ percent3Months: 4.9, percent6Months: 9.9 }, false, false],
    [{ percent3Months: 5 }, true, true],
    [{ percent6Months: 10 }, true, true],
    [{ percent6Months: 10, cause: 'unintended' }, true, false],
    [{ percent6Months: 10, cause: 'wanted' }, false, false],
    [{ percent6Months: 10, cause: 'fluid' }, false, false],
  ] as const)('[CLT-13] %o: lost %s, open %s', (typed, isLost, isOpen) => {
    expect(lossOf({ weightLoss: typed })).toMatchObject({ isLost, isOpen });
  });

  test('[CLT-70] it is old where neither the assessment nor the newest weight is in date', () => {
    const on = '2025-12-01';
    const typed = { percent3Months: 6 };
    expect(lossOf({ on, weightLoss: typed }).isOld).toBe(true);
    expect(lossOf({ on, weightLoss: typed, weighings: [weighing('actual', 62, on)] }).isOld).toBe(true);
    expect(lossOf({ on, weightLoss: typed, weighings: [weighing('actual', 62, ago(5))] }).isOld).toBe(false);
    expect(lossOf({ weightLoss: typed, weighings: [weighing('actual', 62, on)] }).isOld).toBe(false);
  });
});

// Care rules 3 (NICE CG32, as quoted). At 200 cm BMI 16 is 64 kg and BMI 18.5 is 74 kg.
describe('refeeding risk', () => {
  const drugs = 'alcohol misuse or a drug of the list (insulin, chemotherapy, antacid, diuretic)';
  const kg = (value: number): Partial<Assessment> => ({ height: { value: 200, unit: 'cm' }, weighings: [weighing('actual', value)] });
  const lost = (percent3Months: number, percent6Months = 0): Partial<Assessment> => ({ weightLoss: { percent3Months, percent6Months } });
  const little = (littleForDays: number): Partial<Assessment> => ({ intake: { littleForDays } });

  test.each<[string, Partial<Assessment>, readonly string[]]>([
    ['BMI under 16', kg(63.6), ['BMI 15.9']],
    ['BMI 16', kg(64), []],
    ['loss over 15 %', lost(15.1), ['weight loss of 15.1 %']],
    ['loss over 15 % in 6 months', lost(6, 16.2), ['weight loss of 16.2 %']],
    ['loss of 15 %', lost(15), []],
    ['a loss that was wanted', { weightLoss: { percent3Months: 20, cause: 'wanted' } }, []],
    ['little for 11 days', little(11), ['little intake for 11 days']],
    ['little for 10 days', little(10), []],
    ['little for 11 days half a year ago', { ...little(11), on: '2025-12-01' }, []],
    ['BMI and loss', { ...kg(73.6), ...lost(10.1) }, ['BMI 18.4', 'weight loss of 10.1 %']],
    ['BMI 18.5 and loss', { ...kg(74), ...lost(10.1) }, []],
    ['BMI and a loss of 10 %', { ...kg(73.6), ...lost(10) }, []],
    ['BMI and little for 6 days', { ...kg(73.6), ...little(6) }, ['BMI 18.4', 'little intake for 6 days']],
    ['BMI and little for 5 days', { ...kg(73.6), ...little(5) }, []],
    ['BMI and alcohol misuse', { ...kg(73.6), conditions: ['alcohol-misuse'] }, ['BMI 18.4', drugs]],
    ['BMI and insulin', { ...kg(73.6), medicines: ['insulin'] }, ['BMI 18.4', drugs]],
    ['BMI and an antacid', { ...kg(73.6), supplements: ['magnesium-or-aluminum-antacid'] }, ['BMI 18.4', drugs]],
    ['alcohol and insulin count once', { conditions: ['alcohol-misuse'], medicines: ['insulin'] }, []],
    ['BMI under 16 and insulin', { ...kg(63.6), medicines: ['insulin'] }, ['BMI 15.9', drugs]],
    ['nothing', {}, []],
  ])('[CLT-31] %s', (_, more, signs) => {
    expect(refeedingSigns(factsOf(more))).toEqual(signs);
  });

  test.each([
    ['potassium', 3.4, 3.5, 'mmol/L'],
    ['phosphate', 2.4, 2.5, 'mg/dL'],
    ['magnesium', 1.6, 1.7, 'mg/dL'],
  ] as const)('[CLT-31] a low %s before feeding is begun or raised: %d, not %d %s', (analyte, low, normal, unit) => {
    const of = (value: number, more: Partial<Assessment>) => refeedingSigns(factsOf({ ...more, labs: [lab(analyte, value, unit)] }));
    expect(of(low, little(1))).toEqual([`low ${analyte} before feeding`]);
    expect(of(low, { conditions: ['new-feeding'] })).toEqual([`low ${analyte} before feeding`]);
    expect(of(low, { ...little(1), ...kg(73.6) })).toEqual([`low ${analyte} before feeding`]);
    expect([of(normal, little(1)), of(low, little(0)), of(low, {})]).toEqual([[], [], []]);
  });

  test('[CLT-31] the laboratory’s own lower end counts', () => {
    const labs = [lab('potassium', 3.6, 'mmol/L', today, { lowerNormal: 3.8 })];
    expect(refeedingSigns(factsOf({ ...little(1), labs }))).toEqual(['low potassium before feeding']);
  });
});
