import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { basisWords, bmiOf, otherBases, type WeightBasisId, weightBasis } from './weightBasis.ts';

const factsOf = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).facts;
const hemodialysis = { treatment: { setting: 'hemodialysis', place: 'in-center' } } as const;

function chosenOf(more: Partial<Assessment>, pick?: WeightBasisId) {
  const found = weightBasis(factsOf(more), pick);
  if (found.kind === 'none') throw new Error(found.whatToCheck);
  return found;
}

// At 200 cm BMI is the weight by 4: 29 is 116 kg, 30 is 120 kg, 31 is 124 kg. Care rules 4: within 1 kg/m² of 30 both bases are shown.
describe('a BMI about 30', () => {
  const tall = (kg: number, pick?: WeightBasisId) =>
    chosenOf({ height: { value: 200, unit: 'cm' }, weighings: [weighing('actual', kg)] }, pick);
  const adjusted = (kg: number) => tall(kg).others.find(({ id }) => id === 'adjusted');

  test.each([
    [115.9, 'actual', false],
    [116, 'actual', true],
    [120, 'actual', true],
    [124, 'actual', true],
    [124.4, 'adjusted', true],
  ] as const)('[CLT-17] %d kg at 200 cm: %s, to be chosen %s', (kg, id, needsChoice) => {
    expect(tall(kg)).toMatchObject({ chosen: { id }, needsChoice });
    expect(tall(kg).others.some(one => one.id === 'adjusted')).toBe(id === 'actual' && needsChoice);
  });

  test('[CLT-17] it is told why, and a pick settles it', () => {
    expect(adjusted(122)?.why).toBe('BMI 30.5 is within 1 of 30: no single best weight is named, so this is the dietitian’s choice.');
    expect(tall(128).chosen.why).toBe('BMI 32.0 is over 30: no single best weight is named, so this is the dietitian’s choice.');
    expect(tall(122, 'actual')).toMatchObject({ chosen: { id: 'actual' }, needsChoice: false });
    expect(tall(128, 'adjusted')).toMatchObject({ chosen: { id: 'adjusted' }, needsChoice: false });
    expect(tall(100)).toMatchObject({ needsChoice: false, uncertain: false });
  });

  test('[CLT-17] under 5 feet the ideal weight is uncertain', () => {
    const short = chosenOf({ height: { value: 150, unit: 'cm' }, weighings: [weighing('actual', 72)] });
    expect(short.chosen.why).toMatch(/Under 5 feet the ideal weight is uncertain\.$/);
  });

  test('[CLT-17] what else the figure could be set on is a sentence each, without the ideal and the goal weight', () => {
    const heavy = { height: { value: 163, unit: 'cm' }, weighings: [weighing('actual', 98), weighing('standard', 62)] } as const;
    expect(otherBases(chosenOf(heavy))).toEqual([
      'Could be set on the actual weight of 98.0 kg: choose.',
      'Could be set on the adjusted edema free weight of 89.0 kg: choose.', // facts 2, worked
    ]);
    expect(otherBases(chosenOf(heavy, 'actual'))).toEqual([]);
    expect(otherBases(chosenOf({}))).toEqual([]);
    expect(otherBases(weightBasis(factsOf({ weighings: [] })))).toEqual([]);
  });
});

describe('underweight', () => {
  const goalOf = (kg: number) =>
    chosenOf({ height: { value: 200, unit: 'cm' }, weighings: [weighing('actual', kg), weighing('goal', 80)] }).others.find(
      ({ id }) => id === 'goal',
    );

  test('[CLT-17] under BMI 18.5 the goal weight can be chosen to build up; 74 kg at 200 cm is 18.5', () => {
    expect(goalOf(73.6)).toMatchObject({ kg: 80, why: expect.stringContaining('build up') });
    expect([goalOf(74), goalOf(90)]).toEqual([undefined, undefined]);
  });

  test('[CLT-17] without a height there is no BMI, no goal and no ideal weight', () => {
    const { height: _, ...rest } = clientWith({ weighings: [weighing('actual', 50), weighing('goal', 60)] });
    const { facts } = checkAssessment(rest, today);
    const basis = weightBasis(facts);
    expect(basis).not.toHaveProperty('bmi');
    expect(basis).toMatchObject({ needsChoice: false, others: [] });
    expect(bmiOf(facts)).toBeUndefined();
  });
});

describe('the weight before any choice', () => {
  test('[CLT-17] after amputation the ideal weight is less by the missing share (care rules 4)', () => {
    const ideal = (missingParts: NonNullable<Assessment['missingParts']>) =>
      chosenOf({ height: { value: 163, unit: 'cm' }, missingParts }).others.find(({ id }) => id === 'ideal')?.kg;
    // Hamwi 54.824 kg; a lower leg is 5.9 %, a hand 0.7 %.
    expect(ideal([])).toBeCloseTo(54.824, 3);
    expect(ideal(['lower-leg-with-foot'])).toBeCloseTo(54.824 * 0.941, 2);
    expect(ideal(['lower-leg-with-foot', 'hand'])).toBeCloseTo(54.824 * 0.934, 2);
  });

  test('[CLT-17] with edema and no dry weight BMI is still that of the actual weight', () => {
    expect(bmiOf(factsOf({ conditions: ['edema'] }))).toBeCloseTo(25.7, 1);
    expect(bmiOf(factsOf({ weighings: [] }))).toBeUndefined();
  });

  test.each<[string, Partial<Assessment>, string]>([
    ['none', { weighings: [] }, 'Enter a weight.'],
    ['too old', { weighings: [weighing('actual', 70, '2025-12-01')] }, 'Enter a weight. 70.0 kg on 2025-12-01, 196 days old is too old.'],
    ['an old one of another kind', { weighings: [weighing('dry', 70, '2025-12-01')] }, 'Enter a weight.'],
    [
      'too old on hemodialysis',
      { ...hemodialysis, weighings: [weighing('dry', 70, '2026-01-01')] },
      'Enter the dry weight, or a weight after dialysis or after draining. 70.0 kg on 2026-01-01, 165 days old is too old.',
    ],
    ['in hospital', { conditions: ['in-hospital'] }, 'Enter the usual weight, or the one from before admission.'],
  ])('[CLT-17] what is asked for: %s', (_, more, whatToCheck) => {
    expect(weightBasis(factsOf(more))).toEqual({ kind: 'none', whatToCheck });
  });

  test.each<[string, Partial<Assessment>, WeightBasisId]>([
    ['after dialysis, without a dry weight', { ...hemodialysis, weighings: [weighing('after-dialysis', 70)] }, 'after-treatment'],
    ['actual, without either', { ...hemodialysis, weighings: [weighing('actual', 70)] }, 'actual'],
    ['in hospital the dry one, without a usual one', { conditions: ['in-hospital'], weighings: [weighing('dry', 70)] }, 'dry'],
    ['before admission', { conditions: ['in-hospital'], weighings: [weighing('before-admission', 70), weighing('dry', 66)] }, 'usual'],
  ])('[CLT-17] %s', (_, more, id) => {
    expect(chosenOf(more).chosen.id).toBe(id);
  });

  test('[CLT-17] a weight is shown as it was entered, a computed one in kg', () => {
    const pounds = { weight: { value: 154, unit: 'lb' }, kind: 'actual', on: '2026-06-10' } as const;
    expect(basisWords(chosenOf({ weighings: [pounds] }).chosen)).toBe('154 lb (69.9 kg)');
    const heavy = chosenOf({ height: { value: 163, unit: 'cm' }, weighings: [weighing('actual', 98)] });
    expect(basisWords(heavy.chosen)).toBe('65.6 kg'); // facts 2, worked
  });
});
