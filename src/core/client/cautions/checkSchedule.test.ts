import { describe, expect, test } from 'vitest';
import type { Assessment, LabResult } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { addDays } from '#core/quantity/calendarDay.ts';
import { type CheckItem, nextChecks } from './nextChecks.ts';

const hemodialysis: Partial<Assessment> = { treatment: { setting: 'hemodialysis', place: 'in-center' } };
const peritoneal: Partial<Assessment> = { treatment: { setting: 'peritoneal-dialysis', method: 'capd' } };
const stage = (value: 'G4'): Partial<Assessment> => ({ stage: { value, on: '2026-01-10' } });

const everyOf = (item: CheckItem, more: Partial<Assessment>) => nextChecks(clientWith(more), today).find(one => one.item === item)?.every;

const stages = ['G1', 'G2', 'G3a', 'G3b', 'G4', 'G5', undefined] as const;
type Every = string | undefined;

// Off dialysis by stage. Calcium, phosphorus and PTH: facts 9.2 (KDIGO MBD 2017, as quoted) from G3a on; eGFR: KDIGO CKD 2024 (from memory);
// potassium, G1, G2 and no stage: own decision.
describe('the schedule off dialysis, G1, G2, G3a, G3b, G4, G5 and without a stage', () => {
  const year = 'every 12 months';
  const half = 'every 6 to 12 months';
  test.each<[CheckItem, ...Every[]]>([
    ['potassium', year, year, half, 'every 3 to 6 months', 'every 3 months', 'every 1 to 3 months', half],
    ['bicarbonate', year, year, half, 'every 3 to 6 months', 'every 3 months', 'every 1 to 3 months', half],
    ['urea nitrogen', year, year, half, 'every 3 to 6 months', 'every 3 months', 'every 1 to 3 months', half],
    ['calcium', year, year, half, half, 'every 3 to 6 months', 'every 1 to 3 months', half],
    ['phosphorus', year, year, half, half, 'every 3 to 6 months', 'every 1 to 3 months', half],
    ['PTH', year, year, half, half, half, 'every 3 to 6 months', half],
    ['eGFR', year, year, year, 'every 6 months', 'every 4 months', 'every 3 months', year],
    [
      'weight',
      'every 6 months',
      'every 6 months',
      'every 6 months',
      'every 6 months',
      'every 3 months',
      'every 3 months',
      'every 6 months',
    ],
    ['urine ACR', year, year, year, year, year, year, year],
    ['screening', ...stages.map(() => 'every 6 months')],
    ['albumin', ...stages.map(() => undefined)],
    ['Kt/V', ...stages.map(() => undefined)],
  ])('[CLT-40] %s: %s, %s, %s, %s, %s, %s, %s', (item, ...every) => {
    const found = stages.map(value => everyOf(item, value === undefined ? {} : { stage: { value, on: '2026-01-10' } }));
    expect(found).toEqual(every);
  });
});

// Facts 9.2.
describe('the schedule on hemodialysis, on peritoneal dialysis, after a transplant, and in its first months', () => {
  const transplant = (transplantedOn: string): Partial<Assessment> => ({ treatment: { setting: 'transplant', transplantedOn } });
  const mineral = 'every 1 to 3 months';
  const clients = [hemodialysis, peritoneal, { ...transplant('2024-01-01'), ...stage('G4') }, transplant('2026-05-01')];
  test.each<[CheckItem, ...Every[]]>([
    ['weight', 'monthly', 'monthly', 'every 3 months', 'every 3 months'],
    ['screening', 'every 6 months', 'every 6 months', 'every 6 months', 'every 6 months'],
    ['potassium', 'monthly', mineral, mineral, 'every 2 weeks'],
    ['calcium', mineral, mineral, 'every 3 to 6 months', 'weekly'],
    ['bicarbonate', 'monthly', mineral, mineral, 'every 2 weeks'],
    ['phosphorus', mineral, mineral, 'every 3 to 6 months', 'weekly'],
    ['PTH', 'every 3 to 6 months', 'every 3 to 6 months', 'every 12 months', 'every 12 months'],
    ['albumin', 'monthly', 'every 4 to 6 months', undefined, undefined],
    ['nPCR', 'monthly', 'every 4 to 6 months', undefined, undefined],
    ['Kt/V', 'monthly', 'every 4 to 6 months', undefined, undefined],
    ['urine ACR', undefined, undefined, 'every 12 months', 'every 12 months'],
    ['eGFR', undefined, undefined, 'every 4 months', 'every 12 months'],
  ])('[CLT-40] %s: %s; %s; %s; %s', (item, ...every) => {
    expect(clients.map(client => everyOf(item, client))).toEqual(every);
  });

  test('[CLT-40] the transplant is new for 92 days, its calcium weekly for 56', () => {
    const ago = (days: number) => transplant(addDays(today, -days));
    expect([92, 93].map(days => everyOf('potassium', ago(days)))).toEqual(['every 2 weeks', mineral]);
    expect([56, 57].map(days => everyOf('calcium', ago(days)))).toEqual(['weekly', 'every 6 to 12 months']);
  });

  test('[CLT-40] on a low-protein diet albumin every 3 months; HbA1c with diabetes every 3 to 6', () => {
    expect(everyOf('albumin', { medicines: ['ketoanalogs'] })).toBe('every 3 months');
    expect(everyOf('HbA1c', { diabetes: true })).toBe('every 3 to 6 months');
  });

  test('[CLT-40] the dose on hemodialysis is of KDOQI 2006, on peritoneal dialysis from memory', () => {
    const sourceOf = (more: Partial<Assessment>) => nextChecks(clientWith(more), today).find(({ item }) => item === 'Kt/V')?.source;
    expect(sourceOf(hemodialysis)).toMatchObject({ text: 'KDOQI Hemodialysis Adequacy 2006', grade: 'Guideline 2.1' });
    expect(sourceOf(peritoneal)).toMatchObject({ kind: 'common-practice', toBeConfirmed: true });
  });
});

describe('when a check is due', () => {
  const dueOf = (item: CheckItem, more: Partial<Assessment>) => {
    const found = nextChecks(clientWith(more), today).find(one => one.item === item);
    return found && [found.lastOn, found.dueFrom, found.dueBy, found.state];
  };
  const transplant = (transplantedOn: string): Partial<Assessment> => ({ treatment: { setting: 'transplant', transplantedOn } });
  const potassium = (on: string, more: Partial<LabResult> = {}) => ({ labs: [lab('potassium', 4.6, 'mmol/L', on, more)] });

  test('[CLT-40] a week is 7 days, two weeks 14, a month the same day of the next', () => {
    const early = transplant('2026-06-01');
    expect(dueOf('calcium', { ...early, labs: [lab('calcium', 9, 'mg/dL', '2026-06-10')] })?.slice(1, 3)).toEqual([
      '2026-06-17',
      '2026-06-17',
    ]);
    expect(dueOf('potassium', { ...early, ...potassium('2026-06-10') })?.slice(1, 3)).toEqual(['2026-06-24', '2026-06-24']);
    expect(dueOf('potassium', { ...hemodialysis, ...potassium('2026-06-10') })?.slice(1, 3)).toEqual(['2026-07-10', '2026-07-10']);
  });

  test('[CLT-40] it is later, due on its day, and overdue the day after', () => {
    const stateOf = (on: string) => dueOf('potassium', { ...hemodialysis, ...potassium(on) })?.[3];
    expect(['2026-05-16', '2026-05-15', '2026-05-14'].map(stateOf)).toEqual(['later', 'due', 'overdue']);
  });

  test('[CLT-40] a potassium hemolyzed or after dialysis is no check done; another analyte so marked is', () => {
    const marks: readonly Partial<LabResult>[] = [{ hemolyzed: true }, { drawn: 'after-dialysis' }];
    for (const mark of marks) {
      expect(dueOf('potassium', { ...hemodialysis, ...potassium('2026-06-10', mark) })).toEqual([undefined, today, today, 'due']);
      const urea = { labs: [lab('ureaNitrogen', 60, 'mg/dL', '2026-06-10', mark)] };
      expect(dueOf('urea nitrogen', { ...hemodialysis, ...urea })?.[0]).toBe('2026-06-10');
    }
  });

  test('[CLT-40] a usual, goal or standard weight is none that was taken', () => {
    const weighed = (...weighings: Assessment['weighings']) => dueOf('weight', { ...hemodialysis, weighings })?.[0];
    const untaken = (['usual', 'goal', 'standard'] as const).map(kind => weighing(kind, 70, '2026-06-14'));
    expect(weighed(...untaken)).toBeUndefined();
    expect(weighed(...untaken, weighing('after-dialysis', 70, '2026-06-12'))).toBe('2026-06-12');
  });

  test('[CLT-40] the full assessment: at referral; after a transplant at discharge, 3 and 12 months, then yearly', () => {
    const full = (more: Partial<Assessment>) => {
      const found = nextChecks(clientWith(more), today).find(({ item }) => item === 'full assessment')!;
      return [found.every, found.dueBy, found.state];
    };
    const since = (lastFullAssessmentOn?: string) =>
      full({ ...transplant('2025-03-10'), ...(lastFullAssessmentOn === undefined ? {} : { lastFullAssessmentOn }) });
    const atDischarge = 'at discharge, 3 and 12 months';
    expect(full({})).toEqual(['at referral, yearly, or on change', today, 'due']);
    expect(full(hemodialysis)).toEqual(['at referral, yearly, or on change', today, 'due']);
    expect(full({ lastFullAssessmentOn: '2025-06-20' })).toEqual(['yearly, or on change', '2026-06-20', 'later']);
    expect(since()).toEqual([atDischarge, today, 'due']);
    expect(since('2025-03-20')).toEqual([atDischarge, '2025-06-10', 'overdue']);
    expect(since('2025-06-09')).toEqual([atDischarge, '2025-06-10', 'overdue']);
    expect(since('2025-06-10')).toEqual([atDischarge, '2026-03-10', 'overdue']);
    expect(since('2026-03-09')).toEqual([atDischarge, '2026-03-10', 'overdue']);
    expect(since('2026-03-10')).toEqual(['yearly, or on change', '2027-03-10', 'later']);
  });

  test('[CLT-40] after a RAAS change a potassium from the 14th day on is the one that was asked for', () => {
    const changed = (labOn: string) => dueOf('potassium after RAAS change', { raasChangedOn: '2026-05-20', ...potassium(labOn) });
    expect(changed('2026-06-02')).toEqual(['2026-06-02', '2026-06-03', '2026-06-17', 'due']);
    expect(changed('2026-06-03')).toBeUndefined();
  });
});
