import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { problemStatements } from './problemStatements.ts';

describe('problems from numbers', () => {
  const stated = (more: Partial<Assessment>) => {
    const assessment = clientWith(more);
    return problemStatements(checkAssessment(assessment, today).facts, proposePrescription(assessment, today));
  };
  const hemodialysis: Partial<Assessment> = {
    treatment: { setting: 'hemodialysis', place: 'in-center' },
    weighings: [weighing('dry', 70)],
    muscleLoss: { percent3Months: 0 },
  };
  const albumin = lab('albumin', 4.2, 'g/dL');

  // 1.0 g/kg and 25 kcal/kg of 70 kg (facts 3.1, 3.2).
  test('[NOTE-4] eaten below need, with the appetite where it is not good', () => {
    const eaten = (more: Partial<Assessment>) => stated({ ...hemodialysis, labs: [albumin], ...more });
    expect(eaten({ intake: { proteinG: 70, energyKcal: 1750 } })).toEqual([]);
    expect(eaten({ intake: { proteinG: 69, energyKcal: 1749 }, appetite: 'good' })).toEqual([
      'Protein eaten below need, as shown by 69 g a day against at least 70 g.',
      'Energy eaten below need, as shown by 1749 kcal a day against at least 1750 kcal.',
    ]);
    for (const appetite of ['poor', 'fair'] as const)
      expect(eaten({ intake: { proteinG: 60 }, appetite })).toEqual([
        `Protein eaten below need, with ${appetite} appetite, as shown by 60 g a day against at least 70 g.`,
      ]);
    const uneven = { ...hemodialysis, weighings: [weighing('dry', 70.26)], labs: [albumin], intake: { proteinG: 60 } };
    expect(stated(uneven)[0]).toContain('against at least 70.3 g.');
  });

  test('[NOTE-4] wasting by what shows it', () => {
    expect(stated({ labs: [lab('albumin', 3.1, 'g/dL')], weighings: [weighing('actual', 60)], muscleLoss: { percent3Months: 6 } })).toEqual(
      ['Protein-energy wasting by the published criteria, as shown by albumin 3.1 g/dL, BMI 22 kg/m², muscle lost in 3 months 6%.'],
    );
  });

  test('[NOTE-4] lost weight from 5 % in 3 months and 10 % in 6 on, each that reaches its bound', () => {
    const lost = (percent3Months: number, percent6Months: number) =>
      stated({ weightLoss: { percent3Months, percent6Months, cause: 'unintended' } });
    expect(lost(5, 10)).toEqual(['Unintended weight loss, as shown by 5% in 3 months and 10% in 6 months.']);
    expect(lost(5.26, 9.9)).toEqual(['Unintended weight loss, as shown by 5.3% in 3 months.']);
    expect(lost(4.9, 10)).toEqual(['Unintended weight loss, as shown by 10% in 6 months.']);
  });

  test('[NOTE-8] a mineral with its causes; without one only where the target is a bound', () => {
    const potassium = { ...hemodialysis, labs: [albumin, lab('potassium', 5.8, 'mmol/L')], intake: { proteinG: 80, energyKcal: 2000 } };
    expect(stated(potassium)).toEqual([]);
    const words = 'as shown by potassium 5.8 mmol/L (on 2026-06-05, 10 days old).';
    expect(stated({ ...potassium, potassiumSteps: { causesCheckedOn: '2026-06-05' } })).toEqual([
      `More potassium than is cleared, with the kidney disease on record, ${words}`,
    ]);
    expect(stated({ ...potassium, medicines: ['nsaid', 'trimethoprim'] })).toEqual([
      `More potassium than is cleared, related to trimethoprim; NSAID, ${words}`,
    ]);
    const phosphate = { labs: [albumin, lab('phosphate', 6.2, 'mg/dL'), lab('phosphate', 6, 'mg/dL', '2026-05-20')] };
    expect(
      stated({
        ...phosphate,
        stage: { value: 'G4', on: '2026-01-10' },
        muscleLoss: { percent3Months: 0 },
        intake: { proteinG: 80, energyKcal: 2000 },
      }),
    ).toEqual([
      'More phosphorus than is cleared, with the kidney disease on record, as shown by phosphate 6.2 mg/dL (on 2026-06-05, 10 days old).',
    ]);
  });
});
