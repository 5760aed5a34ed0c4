import { describe, expect, test } from 'vitest';
import type { Assessment, LabResult } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import { cautionsFor } from './cautions.ts';

const hemodialysis = { treatment: { setting: 'hemodialysis', place: 'in-center' } } as const;

function alarm(id: string, labs: readonly LabResult[], more: Partial<Assessment> = {}) {
  return cautionsFor(checkAssessment(clientWith({ ...more, labs }), today).facts).find(one => one.id === id);
}

describe('calcium (facts 4.3: corrected over 12 or under 7.5 mg/dL; 5, F1)', () => {
  const calcium = (value: number, on: string, unit = 'mg/dL') => lab('calcium', value, unit, on);
  const albumin = (gPerDl: number, on: string) => lab('albumin', gPerDl, 'g/dL', on);
  const isHigh = (...labs: readonly LabResult[]) => alarm('calcium-high', labs) !== undefined;
  const isLow = (...labs: readonly LabResult[]) => alarm('calcium-low', labs) !== undefined;

  test('[CLT-30] the laboratory’s own corrected calcium stands before a total of that day', () => {
    expect(isHigh(lab('correctedCalcium', 11, 'mg/dL', '2026-06-14'), calcium(12.6, '2026-06-14'))).toBe(false);
    expect(isHigh(lab('correctedCalcium', 12.1, 'mg/dL', '2026-06-14'), calcium(9, '2026-06-14'))).toBe(true);
  });

  test('[CLT-30] a total without albumin is told as it is, and that it is not corrected', () => {
    expect(alarm('calcium-high', [calcium(12.6, '2026-06-14')])?.because).toContain('not corrected: no albumin of that day');
    expect(alarm('calcium-low', [calcium(7.4, '2026-06-14'), albumin(3, '2026-06-13')])?.because).toContain('not corrected');
    expect([isHigh(calcium(9.8, '2026-06-14')), isLow(calcium(9.8, '2026-06-14'))]).toEqual([false, false]);
  });

  test('[CLT-30] with an albumin of the day the corrected one counts alone', () => {
    // 7.4 + 0.8 × (4.0 − 3.0) = 8.2; 11.55 + 0.8 × (4.0 − 2.9) = 12.43.
    expect(isLow(calcium(7.4, '2026-06-14'), albumin(3, '2026-06-14'))).toBe(false);
    const found = alarm('calcium-high', [calcium(11.55, '2026-06-14'), albumin(2.9, '2026-06-14')]);
    expect(found?.because).toMatch(/, corrected 12\.4 mg\/dL$/);
  });

  test('[CLT-30] a newest day that could be corrected, and is well, lifts an earlier one', () => {
    const high = calcium(12.5, '2026-06-12');
    expect(isHigh(high, calcium(9.5, '2026-06-14'), albumin(4.1, '2026-06-14'))).toBe(false);
    expect(isHigh(high, calcium(9.5, '2026-06-14'))).toBe(true);
    expect(isHigh(lab('correctedCalcium', 12.5, 'mg/dL', '2026-06-12'), lab('correctedCalcium', 9.5, 'mg/dL', '2026-06-14'))).toBe(false);
  });

  test('[CLT-30] a total in mmol/L is corrected too, and held to 3.0 and 1.9 mmol/L', () => {
    // 2.5 mmol/L is 10.02 mg/dL, corrected with 3.0 g/dL 10.82: 2.70 mmol/L; 2.9 is 11.62, 12.42, 3.10.
    expect(isHigh(calcium(2.5, '2026-06-14', 'mmol/L'), albumin(3, '2026-06-14'))).toBe(false);
    expect(isHigh(calcium(2.9, '2026-06-14', 'mmol/L'), albumin(3, '2026-06-14'))).toBe(true);
    expect(isLow(calcium(1.8, '2026-06-14', 'mmol/L'), albumin(4, '2026-06-14'))).toBe(true);
  });
});

describe('potassium that rises (facts 4.3: over 0.5 within 12 hours)', () => {
  const at = (value: number, on: string, takenAt?: string, more: Partial<LabResult> = {}) =>
    lab('potassium', value, 'mmol/L', on, { ...(takenAt === undefined ? {} : { takenAt }), ...more });
  const isTold = (...labs: readonly LabResult[]) => alarm('potassium-rise', labs) !== undefined;

  test.each([
    ['over 0.5 in exactly 12 hours', [at(4.5, '2026-06-13', '20:00'), at(5.1, '2026-06-14', '08:00')], true],
    ['in 12 and a half hours', [at(4.5, '2026-06-13', '19:30'), at(5.1, '2026-06-14', '08:00')], false],
    ['in half an hour', [at(4.5, '2026-06-14', '07:30'), at(5.1, '2026-06-14', '08:00')], true],
    ['exactly 0.5', [at(4.6, '2026-06-14', '00:30'), at(5.1, '2026-06-14', '08:00')], false],
    ['that falls', [at(5.2, '2026-06-14', '00:30'), at(4.5, '2026-06-14', '08:00')], false],
    ['that fell again', [at(4.4, '2026-06-14', '02:00'), at(5.2, '2026-06-14', '06:00'), at(4.6, '2026-06-14', '10:00')], false],
    ['from a result without an hour', [at(4.5, '2026-06-14'), at(5.2, '2026-06-14', '08:00')], false],
    ['one result alone', [at(5.2, '2026-06-14', '08:00')], false],
    ['two of one hour, one hemolyzed', [at(4.4, '2026-06-14', '08:00'), at(5.2, '2026-06-14', '08:00', { hemolyzed: true })], false],
  ] as const)('[CLT-30] %s', (_, labs, isToBeTold) => {
    expect(isTold(...labs)).toBe(isToBeTold);
  });

  test('[CLT-30] after dialysis it rises by itself; another analyte is none', () => {
    const after = at(4.4, '2026-06-14', '12:00', { drawn: 'after-dialysis' });
    expect(alarm('potassium-rise', [after, at(5.2, '2026-06-14', '20:00')], hemodialysis)).toBeUndefined();
    const sodium = (value: number, takenAt: string) => lab('sodium', value, 'mmol/L', '2026-06-14', { takenAt });
    expect(isTold(sodium(130, '02:00'), sodium(138, '08:00'))).toBe(false);
  });
});

// Facts 4.3; within 60 days by care rules 2.
test.each([
  [11, '2026-04-15', 9, true], // 60 days
  [11, '2026-04-14', 9, false],
  [11, '2026-06-13', 9, true],
  [11, '2026-06-01', 9.1, false],
  [11, '2026-06-14', 9, false], // two of one day: no drop, and which one is right is not known
  [9, '2026-06-01', 11, false],
])('[CLT-30] hemoglobin %d g/dL on %s, then %d: told to have dropped, %s', (before, on, now, isTold) => {
  const labs = [lab('hemoglobin', before, 'g/dL', on), lab('hemoglobin', now, 'g/dL', '2026-06-14')];
  expect(alarm('hemoglobin-drop', labs) !== undefined).toBe(isTold);
});

describe('creatinine that rises (definition of acute kidney injury: 26 umol/L in 48 hours, or by half in 7 days)', () => {
  const at = (value: number, on: string, takenAt?: string, unit = 'umol/L') =>
    lab('creatinine', value, unit, on, takenAt === undefined ? {} : { takenAt });
  const risen = (...labs: readonly LabResult[]) => alarm('creatinine-rise', labs) !== undefined;

  test.each([
    ['exactly 26 in 2 days', at(150, '2026-06-12'), at(176, '2026-06-14'), true],
    ['25.8 in 2 days', at(150, '2026-06-12'), at(175.8, '2026-06-14'), false],
    ['26 in 3 days', at(150, '2026-06-11'), at(176, '2026-06-14'), false],
    [
      '0.3 mg/dL, as other laboratories call it',
      at(1.5, '2026-06-12', undefined, 'mg/dL'),
      at(1.8, '2026-06-14', undefined, 'mg/dL'),
      true,
    ],
    ['30 in exactly 48 hours', at(200, '2026-06-12', '08:00'), at(230, '2026-06-14', '08:00'), true],
    ['30 in 48 and a half hours', at(200, '2026-06-12', '08:00'), at(230, '2026-06-14', '08:30'), false],
    ['30 in half an hour', at(200, '2026-06-14', '08:00'), at(230, '2026-06-14', '08:30'), true],
    ['where one hour is missing whole days count', at(150, '2026-06-12'), at(177, '2026-06-14', '20:00'), true],
    ['by half in exactly 7 days', at(120, '2026-06-07'), at(180, '2026-06-14'), true],
    ['by half in 8 days', at(120, '2026-06-06'), at(180, '2026-06-14'), false],
    ['by half in 7 days and an hour', at(120, '2026-06-07', '08:00'), at(180, '2026-06-14', '09:00'), false],
    ['by less than half in 7 days', at(120, '2026-06-07'), at(179, '2026-06-14'), false],
    ['two of one day without hours', at(150, '2026-06-14'), at(200, '2026-06-14'), false],
    ['that falls', at(200, '2026-06-12'), at(150, '2026-06-14'), false],
  ] as const)('[CLT-30] %s', (_, before, now, isTold) => {
    expect(risen(before, now)).toBe(isTold);
  });

  test('[CLT-30] on dialysis creatinine swings, and a rise is none', () => {
    expect(alarm('creatinine-rise', [at(300, '2026-06-12'), at(700, '2026-06-14')], hemodialysis)).toBeUndefined();
  });
});
