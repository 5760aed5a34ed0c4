import { describe, expect, test } from 'vitest';
import { isSameShape } from '../../ui/draft/sameShape.ts';
import type { SignedTarget, Target } from './typedDecision.ts';
import { totalPercent, typedMeals } from './typedMeals.ts';
import { typedPrescription } from './typedPrescription.ts';

const sodium: Target = {
  item: 'sodium',
  title: 'Sodium',
  unit: 'mg',
  kind: 'proposed',
  figure: 'under 2300 mg a day',
  range: [0, 2300],
  limit: 'at-most',
  says: 'KDOQI 2020: under 2.3 g',
  reasons: [],
  sources: [],
  needsChoice: false,
  toBeConfirmed: false,
  alternatives: [],
};
const client = { assessmentId: 'first', targets: [sodium], prescriptions: [] };
const signed: SignedTarget = {
  item: 'sodium',
  title: 'Sodium',
  kind: 'bounded',
  from: 'own',
  figure: 'at most 1900 mg a day',
  range: [0, 1900],
  limit: 'at-most',
  says: 'set by the dietitian',
  reason: 'edema',
};

describe('what is decided of a proposal', () => {
  test('it begins with the proposal, or with what was decided before', () => {
    expect(typedPrescription(client).decisions.sodium).toMatchObject({ from: 'proposal', hi: '2300' });
    const before = { id: 'one', stands: true, signedBy: 'A. Dietitian', signedAt: '2026-05-01', targets: [signed] };
    expect(typedPrescription({ ...client, prescriptions: [before] }).decisions.sodium).toMatchObject({
      from: 'own',
      hi: '1900',
      reason: 'edema',
    });
  });

  test('[WEB-4] what was typed for one proposal fits no other: another assessment, another figure', () => {
    const kept = JSON.parse(JSON.stringify({ ...typedPrescription(client), by: 'A. Dietitian' }));
    expect(isSameShape(typedPrescription(client), kept)).toBe(true);
    expect(isSameShape(typedPrescription({ ...client, assessmentId: 'second' }), kept)).toBe(false);
    const otherwise = { ...sodium, figure: 'under 2000 mg a day' };
    expect(isSameShape(typedPrescription({ ...client, targets: [otherwise] }), kept)).toBe(false);
  });
});

test('the parts of a day are added as they are typed; what is empty is no part', () => {
  const { meals } = typedMeals([
    { name: 'breakfast', percent: 40 },
    { name: 'supper', percent: 60 },
  ]);
  expect(totalPercent({ meals })).toBe(100);
  expect(totalPercent({ meals: meals.with(1, { name: 'supper', percent: '' }) })).toBe(40);
});
