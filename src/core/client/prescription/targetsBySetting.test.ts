import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import { potassiumCauses } from '#core/client/states/potassiumCauses.ts';
import { addDays } from '#core/quantity/calendarDay.ts';
import { proposePrescription } from './proposePrescription.ts';
import type { TargetItem } from './target.ts';

const transplant: Assessment['treatment'] = { setting: 'transplant', transplantedOn: '2022-03-01' };
const hemodialysis: Assessment['treatment'] = {
  setting: 'hemodialysis',
  place: 'in-center',
  sessionHours: 4,
  ultrafiltrationLimitMlPerKgH: 10,
};
const peritoneal: Assessment['treatment'] = { setting: 'peritoneal-dialysis', method: 'capd' };

function targetOf(item: TargetItem, more: Partial<Assessment>) {
  const proposal = proposePrescription(clientWith(more), today);
  if (proposal.kind === 'barred') throw new Error('barred');
  return proposal.targets[item];
}

// Institute of Medicine 2005, adequate intake: 25 g women and 38 g men up to 50 years, 21 g and 30 g above.
test.each([
  ['female', 50, 25],
  ['female', 51, 21],
  ['male', 50, 38],
  ['male', 51, 30],
] as const)('[CLT-10] fiber, %s of %d years: %d g', (sex, years, grams) => {
  expect(targetOf('fiber', { sex, age: { years } })).toMatchObject({ kind: 'proposed', range: { lo: grams, hi: grams } });
});

test('[CLT-10] no calcium figure is proposed after a transplant: the range of 800 to 1000 mg is for G3a to G4', () => {
  const egfr = [20, 130].map(days => lab('egfr', 38, 'mL/min/{1.73_m2}', addDays(today, -days)));
  expect(targetOf('calcium', { treatment: transplant, labs: egfr })).toMatchObject({ kind: 'withheld' });
  expect(targetOf('calcium', { labs: egfr })).toMatchObject({ kind: 'proposed', range: { lo: 800, hi: 1000 } });
});

// CJASN 2007;2:999, observational: harm under 4.0 mmol/L before a session of hemodialysis.
test.each([
  [hemodialysis, 3.9, true],
  [hemodialysis, 4, false],
  [peritoneal, 3.9, false],
] as const)('[CLT-11] potassium in range, %o, %d mmol/L: told of harm under 4.0, %s', (treatment, value, isTold) => {
  const target = targetOf('potassium', { treatment, labs: [lab('potassium', value, 'mmol/L')] });
  expect(target.kind).toBe('no-limit');
  expect(JSON.stringify(target).includes('linked to harm')).toBe(isTold);
});

describe('causes of a high potassium', () => {
  const bleeding = (before: number, now: number, days: number) => {
    const labs = [lab('hemoglobin', before, 'g/dL', addDays(today, -1 - days)), lab('hemoglobin', now, 'g/dL', addDays(today, -1))];
    const { facts } = checkAssessment(clientWith({ labs }), today);
    return potassiumCauses(facts).find(({ text }) => text.startsWith('Bleeding'))?.onRecord;
  };

  // A drop of 2 g/dL within 60 days, as in the alarm for it.
  test('[CLT-12] a hemoglobin that dropped is on record as bleeding, one that rose, dropped less or long ago is not', () => {
    expect(bleeding(11, 9, 60)).toMatch(/9 g\/dL/);
    expect(bleeding(11, 9.1, 30)).toBeUndefined();
    expect(bleeding(11, 9, 61)).toBeUndefined();
    expect(bleeding(9, 11, 30)).toBeUndefined();
  });
});
