import { describe, expect, it } from 'vitest';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import type { Assessment } from './assessment.ts';
import { clientWith, lab, today, weighing } from './clientFixture.ts';

function issuesOf(assessment: Assessment): readonly string[] {
  const proposal = proposePrescription(assessment, today);
  if (proposal.kind === 'proposal') return [];
  expect(proposal).not.toHaveProperty('targets');
  return proposal.issues.map(({ kind, code, told }) => `${kind} ${code}: ${told}`);
}

describe('what bars a proposal', () => {
  it('[CLT-7] pregnancy, breastfeeding, under 18 and acute kidney injury are refused, and say why', () => {
    expect(issuesOf(clientWith({ pregnant: true }))).toEqual([
      'refusal pregnant: Pregnancy is outside what this program may propose. Refer to a specialist.',
    ]);
    expect(issuesOf(clientWith({ breastfeeding: true }))[0]).toMatch(/^refusal breastfeeding/);
    expect(issuesOf(clientWith({ acuteKidneyInjury: true }))[0]).toMatch(/^refusal acute-kidney-injury.*local protocol/);
    expect(issuesOf(clientWith({ age: { years: 16 } }))[0]).toMatch(/^refusal under-18: The client is 16/);
    expect(issuesOf(clientWith({ age: { bornOn: '2008-06-16' } }))[0]).toMatch(/^refusal under-18/);
    expect(issuesOf(clientWith({ age: { bornOn: '2008-06-15' } }))).toEqual([]);
  });

  it('[CLT-7] values that cannot be are refused, not left out in silence', () => {
    expect(issuesOf(clientWith({ labs: [lab('potassium', 55, 'mmol/L')] }))).toEqual([
      'question unit-in-question: potassium 55 mmol/L cannot be: was the decimal point left out (5.5 mmol/L)?',
    ]);
    expect(issuesOf(clientWith({ labs: [lab('potassium', 5, '')] }))[0]).toMatch(/^refusal unit-not-known: potassium 5 has no unit/);
    expect(issuesOf(clientWith({ weighings: [weighing('actual', 7)] }))[0]).toMatch(/^refusal impossible-value/);
    expect(issuesOf(clientWith({ height: { value: 65, unit: 'cm' } }))[0]).toMatch(
      /^question unit-in-question: Height 65 cm cannot be: was it in\?/,
    );
    expect(issuesOf(clientWith({ age: { years: Number.NaN } }))[0]).toMatch(/^refusal impossible-value/);
    expect(issuesOf(clientWith({ urineMlPerDay: { value: -1, on: today } }))[0]).toMatch(/^refusal impossible-value/);
  });

  it('[CLT-7] a day that is after today, or is none, is refused', () => {
    expect(issuesOf(clientWith({ labs: [lab('potassium', 5, 'mmol/L', '2026-06-16')] }))).toEqual([
      'refusal from-the-future: potassium is dated 2026-06-16, after today (2026-06-15).',
    ]);
    expect(issuesOf(clientWith({ labs: [lab('potassium', 5, 'mmol/L', '2026-02-30')] }))[0]).toMatch(/^refusal not-a-day/);
    expect(issuesOf(clientWith({ weighings: [weighing('actual', 70, '2027-01-01')] }))[0]).toMatch(/^refusal from-the-future/);
    expect(issuesOf(clientWith({ urineMlPerDay: { value: 800, on: '' } }))).toEqual([
      'refusal not-a-day: urine volume: its day is missing.',
    ]);
    expect(issuesOf(clientWith({ age: { bornOn: 'last year' } }))[0]).toMatch(/^refusal not-a-day/);
  });
});

describe('questions about units', () => {
  it('[CLT-8] creatinine in umol/L typed as mg/dL is asked about', () => {
    expect(issuesOf(clientWith({ labs: [lab('creatinine', 132.6, 'mg/dL')] }))).toEqual([
      'question unit-in-question: creatinine 132.6 mg/dL cannot be: was it umol/L?',
    ]);
  });

  it('[CLT-8] a weight in kg that looks like pounds is asked about, until it is confirmed', () => {
    expect(issuesOf(clientWith({ weighings: [weighing('actual', 165)] }))).toEqual([
      'question unit-in-question: actual weight 165 kg: was it lb? 165 lb is 74.8 kg.',
    ]);
    expect(issuesOf(clientWith({ weighings: [{ ...weighing('actual', 165), unitConfirmed: true }] }))).toEqual([]);
    expect(issuesOf(clientWith({ weighings: [{ ...weighing('actual', 165), weight: { value: 165, unit: 'lb' } }] }))).toEqual([]);
  });

  it('[CLT-8] a weight that is 2.2 times another of the client is asked about', () => {
    const tall = { height: { value: 200, unit: 'cm' } } as const;
    expect(issuesOf(clientWith({ ...tall, weighings: [weighing('actual', 154), weighing('dry', 70)] }))[0]).toMatch(/was it lb/);
    expect(issuesOf(clientWith({ ...tall, weighings: [weighing('actual', 154), weighing('goal', 70)] }))).toEqual([]);
  });

  it('[CLT-7] cautions are shown also where no target is', () => {
    const proposal = proposePrescription(clientWith({ pregnant: true, labs: [lab('potassium', 6.7, 'mmol/L', '2026-06-12')] }), today);
    expect(proposal.kind).toBe('barred');
    expect(proposal.cautions[0]).toMatchObject({ id: 'potassium-6.5', sameDay: true, contact: 'emergency-now' });
  });
});
