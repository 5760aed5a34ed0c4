import { describe, expect, it } from 'vitest';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { hemodialysisClient, recordOf } from '#core/client/record/recordFixture.ts';
import { aimStates } from './aimStates.ts';

const of = (more: Parameters<typeof clientWith>[0]) => aimStates(recordOf(clientWith(more)), today);

describe('what the record shows that food is picked by', () => {
  it('[CLT-65] nobody assessed, or a question open: nothing', () => {
    expect(aimStates({ ...recordOf(clientWith()), assessments: [], prescriptions: [] }, today)).toEqual({});
    // 45 mmol/L looks like a missing decimal point (care rules 5).
    expect(of({ labs: [lab('potassium', 45, 'mmol/L')] })).toEqual({});
  });

  it('[CLT-65] one phosphate above: additives alone; two of different days: food too (care rules 2)', () => {
    const above = (value: number, on: string) => lab('phosphate', value, 'mg/dL', on, { upperNormal: 4.5 });
    expect(of({ labs: [above(5.9, '2026-06-05')] }).phosphate).toBe('additives');
    expect(of({ labs: [above(5.9, '2026-06-05'), above(5.6, '2026-05-05')] }).phosphate).toBe('food');
    expect(of({ labs: [lab('phosphate', 2.0, 'mg/dL', '2026-06-05', { lowerNormal: 2.5, confirmed: true })] }).phosphate).toBe('low');
  });

  it('[CLT-65] a high potassium: additives alone until its causes are marked as checked (care rules 4, CLT-12)', () => {
    // The fixture: 5.8 mmol/L on hemodialysis, causes not checked.
    expect(aimStates(recordOf(hemodialysisClient), today).potassium).toBe('additives');
    const checked = { ...hemodialysisClient, potassiumSteps: { causesCheckedOn: today } };
    expect(aimStates(recordOf(checked), today).potassium).toBe('food');
    expect(of({ labs: [lab('potassium', 3.1, 'mmol/L')] }).potassium).toBe('low');
  });

  it('[CLT-65] wasting takes food back and leaves additives (care rules 3)', () => {
    const wasting = { ...hemodialysisClient, potassiumSteps: { causesCheckedOn: today }, appetite: 'poor' as const };
    expect(aimStates(recordOf(wasting), today)).toMatchObject({ isWasting: true, potassium: 'additives' });
    expect(aimStates(recordOf(hemodialysisClient), today).isWasting).toBe(false);
  });

  it('[CLT-65] lost weight is enough: 62.0 kg after 68.0 kg 80 days before is 8.8 % (care rules 3)', () => {
    const lost = { weighings: [weighing('actual', 62, '2026-06-10'), weighing('actual', 68, '2026-03-22')] };
    expect(of(lost).isWasting).toBe(true);
  });
});
