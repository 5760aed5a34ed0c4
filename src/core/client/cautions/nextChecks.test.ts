import { describe, expect, it } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { addDays, addMonths, daysBetween, isDay, yearsBetween } from '#core/quantity/calendarDay.ts';
import { type CheckItem, nextChecks } from './nextChecks.ts';

// Facts section 9.2.
const dueOf = (item: CheckItem, more: Partial<Assessment>) => {
  const found = nextChecks(clientWith(more), today).find(one => one.item === item);
  return found && [found.every, found.dueFrom, found.dueBy, found.state];
};
const stage = (value: 'G3b' | 'G4' | 'G5') => ({ stage: { value, on: '2026-01-10' } }) as const;
const inCenter = { setting: 'hemodialysis', place: 'in-center' } as const;

describe('next checks', () => {
  it('[CLT-40] weight: 6 months in G1-3, 3 months in G4-5, monthly on dialysis', () => {
    expect(dueOf('weight', stage('G3b'))).toEqual(['every 6 months', '2026-12-10', '2026-12-10', 'later']);
    expect(dueOf('weight', stage('G4'))).toEqual(['every 3 months', '2026-09-10', '2026-09-10', 'later']);
    expect(dueOf('weight', { treatment: inCenter, weighings: [weighing('dry', 70, '2026-05-01')] })).toEqual([
      'monthly',
      '2026-06-01',
      '2026-06-01',
      'overdue',
    ]);
  });

  it('[CLT-40] each marker for itself: calcium and phosphorus by stage, weekly early after a transplant', () => {
    const labs = [lab('calcium', 9, 'mg/dL', '2026-03-15'), lab('phosphate', 4, 'mg/dL', '2026-06-01')];
    expect(dueOf('calcium', { ...stage('G5'), labs })).toEqual(['every 1 to 3 months', '2026-04-15', '2026-06-15', 'due']);
    expect(dueOf('calcium', { ...stage('G4'), labs })).toEqual(['every 3 to 6 months', '2026-06-15', '2026-09-15', 'due']);
    expect(dueOf('phosphorus', { ...stage('G5'), labs })?.[3]).toBe('later');
    expect(dueOf('calcium', { treatment: { setting: 'transplant', transplantedOn: '2026-06-01' }, labs })?.[0]).toBe('weekly');
  });

  it('[CLT-40] potassium off dialysis and after a transplant, and eGFR by stage, never done is due', () => {
    expect(dueOf('potassium', stage('G4'))).toEqual(['every 3 months', today, today, 'due']);
    expect(dueOf('potassium', { treatment: { setting: 'transplant', transplantedOn: '2024-01-01' } })?.[3]).toBe('due');
    const labs = [lab('egfr', 22, 'mL/min/{1.73_m2}', '2026-03-01')];
    expect(dueOf('eGFR', { ...stage('G4'), labs })).toEqual(['every 4 months', '2026-07-01', '2026-07-01', 'later']);
  });

  it('[CLT-40] potassium 2 to 4 weeks after a RAAS change, until it was measured', () => {
    const changed = { raasChangedOn: '2026-06-01' };
    expect(dueOf('potassium after RAAS change', changed)).toEqual(['2 to 4 weeks after the change', '2026-06-15', '2026-06-29', 'due']);
    expect(
      dueOf('potassium after RAAS change', { ...changed, raasChangedOn: '2026-05-01', labs: [lab('potassium', 5, 'mmol/L')] }),
    ).toBeUndefined();
  });

  it('[CLT-40] a full assessment within 90 days of dialysis, then yearly; at 3 and 12 months after a transplant', () => {
    expect(dueOf('full assessment', { treatment: { ...inCenter, startedOn: '2026-05-01' } })).toEqual([
      'within 90 days of the start, then yearly',
      '2026-05-01',
      '2026-07-30',
      'due',
    ]);
    expect(dueOf('full assessment', { lastFullAssessmentOn: '2025-06-14' })?.[3]).toBe('overdue');
    expect(
      dueOf('full assessment', {
        treatment: { setting: 'transplant', transplantedOn: '2026-01-10' },
        lastFullAssessmentOn: '2026-04-12',
      })?.[2],
    ).toBe('2027-01-10');
  });

  it('[CLT-40] what was never done is due today; HbA1c for diabetes alone; first what is due first', () => {
    const checks = nextChecks(clientWith({ diabetes: true }), today);
    expect(checks.find(({ item }) => item === 'HbA1c')).toMatchObject({ dueBy: today, state: 'due' });
    expect(dueOf('HbA1c', {})).toBeUndefined();
    const days = checks.map(({ dueBy }) => dueBy);
    expect(days).toEqual([...days].sort());
  });
});

describe('days', () => {
  it('[CLT-41] months end where the shorter month ends, leap years count, ages are completed years', () => {
    expect(addMonths('2026-01-31', 1)).toBe('2026-02-28');
    expect(addMonths('2028-01-31', 1)).toBe('2028-02-29');
    expect(addMonths('2026-11-30', 3)).toBe('2027-02-28');
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
    expect(yearsBetween('2008-06-16', '2026-06-15')).toBe(17);
    expect([isDay('2027-02-29'), isDay('2028-02-29'), isDay('2026-13-01'), isDay('15.6.2026')]).toEqual([false, true, false, false]);
  });
});
