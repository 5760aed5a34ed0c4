import { describe, expect, test } from 'vitest';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { hemodialysisClient } from '#core/client/record/recordFixture.ts';
import { settings } from '../setting.ts';
import { proposePrescription } from './proposePrescription.ts';
import { type TargetItem, targetItems } from './target.ts';
import { targetLine } from './targetLine.ts';

const treatments = {
  'ckd-not-on-dialysis': { setting: 'ckd-not-on-dialysis' },
  hemodialysis: { setting: 'hemodialysis', place: 'in-center' },
  'peritoneal-dialysis': { setting: 'peritoneal-dialysis', method: 'capd' },
  transplant: { setting: 'transplant', transplantedOn: '2025-01-01' },
} as const;

function linesOf(assessment: ReturnType<typeof clientWith>) {
  const proposal = proposePrescription(assessment, today);
  if (proposal.kind === 'barred') throw new Error('no targets');
  const { facts } = checkAssessment(assessment, today);
  return (item: TargetItem) => targetLine(proposal.targets[item], facts, proposal.weight);
}

describe('a target in one line', () => {
  test('[CLT-71] on hemodialysis: the figure a kg and the dry weight, the newest result that counts, the urine', () => {
    const line = linesOf(hemodialysisClient);
    expect(line('energy')).toEqual({ basis: '25 – 35 kcal × 72.0 kg', why: 'to keep weight and muscle', source: 'KDOQI 2020' });
    expect(line('protein')).toEqual({ basis: '1 – 1.2 g × 72.0 kg', why: 'dialysis takes protein away', source: 'KDOQI 2020' });
    // The hemolyzed 6.1 of May sets nothing.
    expect(line('potassium')).toEqual({ basis: '5.8 mmol/L, Jun 5', why: 'other causes come before food', source: 'KDOQI 2020' });
    expect(line('phosphorus')).toMatchObject({ basis: '2.1 mmol/L, Jun 5', source: 'KDIGO MBD 2017' });
    expect(line('fluid')).toEqual({ basis: 'urine 300 mL, Jun 1', why: 'between two sessions', source: 'practice' });
    expect(line('fiber')).toMatchObject({ basis: 'woman over 50', source: 'IOM 2005' });
    expect(line('sodium').basis).toBe('one figure for all');
    expect(line('calcium').basis).toBeUndefined();
  });

  test('[CLT-71] a result of another year has its year; what is not known is no basis', () => {
    const stage = { value: 'G4', on: '2025-11-01' } as const;
    const line = linesOf(clientWith({ stage, weighings: [], labs: [lab('phosphate', 4.1, 'mg/dL', '2025-12-20')] }));
    expect(line('phosphorus').basis).toBe('4.1 mg/dL, Dec 20, 2025');
    expect(line('energy')).toEqual({ why: 'no weight in date', source: 'KDOQI 2020' });
    expect(line('potassium')).toEqual({ why: 'no result that counts', source: 'own rule' });
    expect(line('calcium').basis).toBe('stage G4');
  });

  test.each(settings)('[CLT-71] %s: a few words and a source for every target, well or badly known', setting => {
    const known = {
      labs: [lab('potassium', 5.9, 'mmol/L'), lab('phosphate', 6.4, 'mg/dL'), lab('phosphate', 6.2, 'mg/dL', '2026-05-06')],
      stage: { value: 'G3b', on: '2026-02-01' } as const,
      weighings: [weighing('actual', 70), weighing('dry', 69)],
      urineMlPerDay: { value: 500, on: '2026-06-01' },
    };
    const poor = { appetite: 'poor', weightLoss: { percent3Months: 8, cause: 'unintended' }, labs: [lab('albumin', 2.9, 'g/dL')] } as const;
    for (const more of [{}, known, poor, { ...known, conditions: ['frail', 'heart-failure', 'acute-illness'] as const }]) {
      const line = linesOf(clientWith({ ...more, treatment: treatments[setting] }));
      for (const item of targetItems) {
        const { why, source } = line(item);
        expect(why.split(' ').length, `${item}: ${why}`).toBeLessThanOrEqual(7);
        expect([why, source], item).not.toContain('');
      }
    }
  });
});
