import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import type { GfrCategory } from '#core/client/formulas/gfrCategory.ts';
import { addDays } from '#core/quantity/calendarDay.ts';
import { newestRate, stageFacts, stageOf } from './stage.ts';

const factsOf = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).facts;
const egfr = (value: number, on = '2026-06-05') => lab('egfr', value, 'mL/min/{1.73_m2}', on);
const creatinine = (mgPerDl: number, on = '2026-06-05') => lab('creatinine', mgPerDl, 'mg/dL', on);
const typed = (value: GfrCategory, on = '2026-01-01') => ({ stage: { value, on } });
const onDialysis: readonly Assessment['treatment'][] = [
  { setting: 'hemodialysis', place: 'in-center' },
  { setting: 'peritoneal-dialysis', method: 'capd' },
];
const transplant: Partial<Assessment> = { treatment: { setting: 'transplant', transplantedOn: '2024-01-01' } };

describe('the stage', () => {
  test('[CLT-9] of two eGFRs the milder, whichever is newer', () => {
    expect(stageOf(factsOf({ labs: [egfr(28), egfr(32, '2026-01-01')] }))).toBe('G3b');
    expect(stageOf(factsOf({ labs: [egfr(32), egfr(28, '2026-01-01')] }))).toBe('G3b');
    expect(stageFacts(factsOf({ labs: [egfr(28), egfr(28, '2026-01-01')] }))).toEqual({ restricting: 'G4', cautioning: 'G4' });
  });

  test('[CLT-9] a newer eGFR that differs: the milder restricts, the lower cautions (care rules 1)', () => {
    expect(stageFacts(factsOf({ ...typed('G3a'), labs: [egfr(28)] }))).toMatchObject({ restricting: 'G3a', cautioning: 'G4' });
    expect(stageFacts(factsOf({ ...typed('G4'), labs: [egfr(50)] }))).toMatchObject({ restricting: 'G3a', cautioning: 'G4' });
    expect(stageFacts(factsOf({ ...typed('G4'), labs: [egfr(28)] }))).toEqual({ restricting: 'G4', cautioning: 'G4' });
  });

  test('[CLT-9] an eGFR of the day of the typed stage is known with it; one of the day after asks', () => {
    const question = (on: string) => stageFacts(factsOf({ ...typed('G4', '2026-06-05'), labs: [egfr(50, on)] })).question;
    expect(question('2026-06-05')).toBeUndefined();
    expect(question('2026-06-06')).toContain('the eGFR of 2026-06-06 is 50, G3a');
  });

  test('[CLT-9] on dialysis there is no stage and no rate', () => {
    for (const treatment of onDialysis) {
      const facts = factsOf({ treatment, ...typed('G4'), labs: [egfr(12), egfr(12, '2026-01-01')] });
      expect(stageFacts(facts)).toEqual({});
      expect(newestRate(facts)).toBeUndefined();
    }
  });
});

describe('the newest eGFR in date', () => {
  test('[CLT-9] the laboratory’s own before one computed from its creatinine; none in acute kidney injury', () => {
    // F, 64 years: 1.0 mg/dL is 63, by CKD-EPI 2021.
    expect(newestRate(factsOf({ labs: [egfr(22), creatinine(1)] }))).toBe(22);
    expect(newestRate(factsOf({ labs: [egfr(22, '2026-05-01'), creatinine(1)] }))).toBe(63);
    expect(newestRate(factsOf({ labs: [creatinine(1)], age: { years: 17 } }))).toBeUndefined();
    expect(newestRate(factsOf({ labs: [egfr(22)], acuteKidneyInjury: true }))).toBeUndefined();
    expect(newestRate(factsOf({}))).toBeUndefined();
  });

  // Care rules 1: 200 days, in G4 and G5 100; after a transplant 100.
  test.each<[string, Partial<Assessment>, rate: number, days: number]>([
    ['G3b by the team', typed('G3b'), 50, 200],
    ['G4 by the team', typed('G4'), 50, 100],
    ['G5 by the team', typed('G5'), 50, 100],
    ['no stage, eGFR 50', {}, 50, 200],
    ['no stage, eGFR 22', {}, 22, 100],
    ['a transplant in G3b', { ...transplant, ...typed('G3b') }, 50, 100],
  ])('[CLT-70] %s, %o: an eGFR of %d counts for %d days', (_, more, rate, days) => {
    const at = (age: number) => newestRate(factsOf({ ...more, labs: [egfr(rate, addDays(today, -age))] }));
    expect([at(days), at(days + 1)]).toEqual([rate, undefined]);
  });
});
