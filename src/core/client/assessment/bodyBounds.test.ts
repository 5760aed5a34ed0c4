import { describe, expect, test } from 'vitest';
import type { Assessment, Weighing } from './assessment.ts';
import { checkAssessment } from './checkAssessment.ts';
import { clientWith, today, weighing } from './clientFixture.ts';

// Care rules 5, the column "plausible", at its very bounds; own decision.

const told = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today).issues.map(one => `${one.kind}: ${one.told}`);
const kg = (value: number, more: Partial<Weighing> = {}): Weighing => ({ ...weighing('actual', value), ...more });
const cm = (value: number) => ({ height: { value, unit: 'cm' as const } });
const hemodialysis = (more: object) => ({ treatment: { setting: 'hemodialysis' as const, place: 'in-center' as const, ...more } });
const peritoneal = (more: object) => ({ treatment: { setting: 'peritoneal-dialysis' as const, method: 'capd' as const, ...more } });
const bag = (liters: number, percent: number) => peritoneal({ bags: [{ liters, percent, labeledAs: 'dextrose' }] });

describe('figures that can just be, and those that cannot', () => {
  test.each<[string, Partial<Assessment>[], string, Partial<Assessment>[]]>([
    [
      'urine',
      [0, 10.1, 6000].map(value => ({ urineMlPerDay: { value, on: today } })),
      'expected 0 to 6000 mL a day.',
      [-0.1, 6000.1].map(value => ({ urineMlPerDay: { value, on: today } })),
    ],
    [
      'energy eaten',
      [0, 6000].map(energyKcal => ({ intake: { energyKcal } })),
      'expected 0 to 6000 kcal a day.',
      [-1, 17_001].map(energyKcal => ({ intake: { energyKcal } })),
    ],
    [
      'energy in kilojoules',
      [],
      'expected 0 to 6000 kcal a day. Was it kilojoules?',
      [6000.1, 17_000].map(energyKcal => ({ intake: { energyKcal } })),
    ],
    [
      'protein eaten',
      [0, 300].map(proteinG => ({ intake: { proteinG } })),
      'expected 0 to 300 g a day.',
      [-1, 301].map(proteinG => ({ intake: { proteinG } })),
    ],
    [
      'days of little intake',
      [0, 365].map(littleForDays => ({ intake: { littleForDays } })),
      'expected 0 to 365 days.',
      [-1, 366].map(littleForDays => ({ intake: { littleForDays } })),
    ],
    ...(['weightLoss', 'muscleLoss'] as const).flatMap(loss =>
      (['percent3Months', 'percent6Months'] as const).map((months): [string, Partial<Assessment>[], string, Partial<Assessment>[]] => [
        `${loss} ${months}`,
        [0, 50].map(percent => ({ [loss]: { [months]: percent } })),
        'expected 0 to 50 %. A loss has no sign; a gain is left out.',
        [-1, 51].map(percent => ({ [loss]: { [months]: percent } })),
      ]),
    ),
    [
      'hours a session',
      [1, 12].map(sessionHours => hemodialysis({ sessionHours })),
      'expected 1 to 12 h.',
      [0.9, 12.1, 59, 721].map(sessionHours => hemodialysis({ sessionHours })),
    ],
    ['hours in minutes', [], 'expected 1 to 12 h. Was it minutes?', [60, 720].map(sessionHours => hemodialysis({ sessionHours }))],
    [
      'sessions a week',
      [1, 7].map(sessionsPerWeek => hemodialysis({ sessionsPerWeek })),
      'expected 1 to 7 sessions.',
      [0, 8].map(sessionsPerWeek => hemodialysis({ sessionsPerWeek })),
    ],
    [
      'ultrafiltration limit',
      [1, 30].map(limit => hemodialysis({ ultrafiltrationLimitMlPerKgH: limit })),
      'expected 1 to 30 mL/kg/h.',
      [0.9, 30.1].map(limit => hemodialysis({ ultrafiltrationLimitMlPerKgH: limit })),
    ],
    [
      'absorbed share',
      [0.1, 1].map(absorbedShare => peritoneal({ absorbedShare })),
      'expected 0.1 to 1 of 1.',
      [0.05, 1.1, 9, 101].map(absorbedShare => peritoneal({ absorbedShare })),
    ],
    ['absorbed share in percent', [], 'Was it 10 %?', [peritoneal({ absorbedShare: 10 })]],
    ['absorbed share in percent', [], 'Was it 100 %?', [peritoneal({ absorbedShare: 100 })]],
    ['dialysate bag', [bag(0.1, 1.5), bag(30, 1.5)], 'expected 0.1 to 30 L.', [bag(0.05, 1.5), bag(31, 1.5)]],
    ['dialysate glucose', [bag(2, 0.5), bag(2, 4.25)], 'expected 0.5 to 4.25 %.', [bag(2, 0.4), bag(2, 4.3)]],
  ])('[CLT-95] %s', (_, within, expected, outside) => {
    for (const more of within) expect(told(more)).toEqual([]);
    for (const more of outside) {
      expect(told(more)).toEqual([expect.stringMatching(/^refusal: /)]);
      expect(told(more)[0]!.endsWith(expected)).toBe(true);
    }
  });

  test('[CLT-95] urine up to 10 mL may be liters', () => {
    const asked = (value: number) => told({ urineMlPerDay: { value, on: today } });
    expect(asked(10)).toEqual(['question: Urine 10 mL a day: were liters meant (10000 mL)? Type 0 for none.']);
    expect(asked(0.5)).toHaveLength(1);
  });
});

describe('height', () => {
  test.each<[Assessment['height'], RegExp | undefined]>([
    [{ value: 100, unit: 'cm' }, undefined],
    [{ value: 250, unit: 'cm' }, undefined],
    [{ value: 99, unit: 'cm' }, /^refusal: Height 99 cm cannot be: expected 100 to 250 cm\.$/],
    [{ value: 251, unit: 'cm' }, /^refusal/],
    // In meters it would be 120 to 220 cm.
    [{ value: 1.2, unit: 'cm' }, /^question: Height 1\.2 cm cannot be: was it m\?$/],
    [{ value: 2.2, unit: 'cm' }, /was it m\?/],
    [{ value: 1.19, unit: 'cm' }, /^refusal/],
    [{ value: 2.21, unit: 'cm' }, /^refusal/],
    [{ feet: 5, inches: 0 }, undefined],
    [{ feet: 5, inches: 11.99 }, undefined],
    [{ feet: 5, inches: 12 }, /^refusal: Height 5 ft 12 in cannot be: expected 0 to 11\.99 inches beside the feet\.$/],
    [{ feet: 5, inches: -1 }, /0 to 11\.99 inches/],
    [{ feet: 5.5, inches: 6 }, /^refusal: Height 5\.5 ft 6 in cannot be: expected whole feet, the rest in inches\.$/],
    [{ feet: 3, inches: 0 }, /^refusal: Height 3 ft 0 in cannot be: expected 3 ft 4 in to 8 ft 2 in\.$/],
    [{ feet: 8, inches: 3 }, /3 ft 4 in to 8 ft 2 in/],
  ])('[CLT-95] %o', (height, issue) => {
    expect(told({ ...(height && { height }), weighings: [] })).toEqual(issue === undefined ? [] : [expect.stringMatching(issue)]);
  });

  test('[CLT-95] without one that stands there is none', () => {
    const { height: _, ...unmeasured } = clientWith();
    expect(checkAssessment(unmeasured, today).facts).not.toHaveProperty('heightCm');
    expect(checkAssessment(clientWith(cm(99)), today).facts).not.toHaveProperty('heightCm');
  });
});

describe('weight', () => {
  const confirmed = { unitConfirmed: true } as const;
  const { height: _, ...unmeasured } = clientWith();
  const withoutHeight = (value: number) =>
    checkAssessment({ ...unmeasured, weighings: [kg(value)] }, today).issues.map(one => `${one.kind}: ${one.told}`);

  test('[CLT-95] 30 to 250 kg', () => {
    expect(told({ ...cm(150), weighings: [kg(30)] })).toEqual([]);
    expect(told({ weighings: [kg(29.9, confirmed)] })).toEqual([
      expect.stringContaining('cannot be: expected 30 to 250 kg (66 to 551 lb)'),
    ]);
    expect(told({ weighings: [kg(250, confirmed)] })).toEqual([]);
    expect(told({ weighings: [kg(250.1, confirmed)] })).toHaveLength(1);
    const kept = (...weighings: readonly Weighing[]) =>
      checkAssessment(clientWith({ weighings }), today).facts.weights.map(weight => weight.kg);
    expect(kept(kg(29.9), kg(30, { kind: 'dry' }), kg(250, { kind: 'usual' }), kg(250.1, { kind: 'goal' }))).toEqual([30, 250]);
  });

  test('[CLT-95] one that cannot be is asked about where the other unit explains it: BMI 16 to 45, or no height', () => {
    // 400 lb is 181.4 kg: BMI 66.6 at 165 cm, 45.4 at 200 cm, 45.0 at 201 cm.
    expect(told({ weighings: [kg(400)] })).toEqual([expect.stringMatching(/^refusal/)]);
    expect(told({ ...cm(200), weighings: [kg(400)] })).toEqual([expect.stringMatching(/^refusal/)]);
    expect(told({ ...cm(201), weighings: [kg(400)] })).toEqual([
      expect.stringMatching(/^question: actual weight 400 kg: was it lb\? 400 lb is 181\.4 kg/),
    ]);
    expect(withoutHeight(400)).toEqual([expect.stringMatching(/^question: actual weight 400 kg: was it lb\?/)]);
    expect(withoutHeight(600)).toEqual([expect.stringMatching(/^refusal/)]);
  });

  // At 200 cm BMI is a fourth of the weight: 13 is 52 kg, 14 is 56 kg, 16 is 64 kg, 45 is 180 kg, 50 is 200 kg, 60 is 240 kg.
  test.each<[string, Weighing, RegExp | undefined]>([
    ['BMI 13', kg(52), undefined],
    ['BMI 12.9', kg(51.6), /BMI of 12\.9: are weight and height right/],
    ['BMI 50', kg(200), undefined],
    ['BMI 50.1: 200.4 lb are 90.9 kg, BMI 22.7', kg(200.4), /was it lb/],
    ['BMI 14: 123.5 lb', { ...kg(70), weight: { value: 123.46, unit: 'lb' } }, undefined],
    ['BMI 13.9 of 123 lb: 123 kg is BMI 30.8', { ...kg(70), weight: { value: 123, unit: 'lb' } }, /was it kg/],
  ])('[CLT-95] at 200 cm, %s', (_name, weight, issue) => {
    expect(told({ ...cm(200), weighings: [weight] })).toEqual(issue === undefined ? [] : [expect.stringMatching(issue)]);
  });

  test('[CLT-95] a missing leg is counted in: 30 kg are 35.7 kg of a whole body, BMI 13.1', () => {
    expect(told({ weighings: [kg(30)], missingParts: ['whole-leg'] })).toEqual([]);
    expect(told({ weighings: [kg(30)], missingParts: ['hand'] })).toEqual([expect.stringContaining('BMI of 11.1')]);
  });

  // 154 lb are 69.85 kg: within 7 % of 74.9 kg and 65.4 kg, and no longer of 75.2 kg and 65.2 kg.
  test.each([
    [74.9, 'dry', 1],
    [75.2, 'dry', 0],
    [65.4, 'dry', 1],
    [65.2, 'dry', 0],
    [70, 'goal', 0],
    [70, 'standard', 0],
  ] as const)('[CLT-8] 154 kg beside %d kg (%s): asked %d times', (other, kind, asked) => {
    const tall = cm(200);
    expect(told({ ...tall, weighings: [kg(154), weighing(kind, other)] })).toHaveLength(asked);
    if (kind !== 'dry') expect(told({ ...tall, weighings: [kg(70), weighing(kind, 154)] })).toEqual([]);
  });

  test('[CLT-93] a mark of another treatment is asked about, by its name', () => {
    const marked = (kind: Weighing['kind']) => told({ weighings: [weighing(kind, 70)] });
    expect(marked('after-drain')[0]).toMatch(/marked as after drain, and the client is not on peritoneal dialysis/);
    expect(marked('before-dialysis')[0]).toMatch(/marked as before dialysis, and the client is not on hemodialysis/);
  });
});

test('[CLT-95] two parts of the arms and two of the legs can be missing, three cannot', () => {
  expect(told({ missingParts: ['hand', 'hand', 'foot', 'foot'], weighings: [] })).toEqual([]);
  expect(told({ missingParts: ['hand', 'hand', 'foot'], weighings: [] })).toEqual([]);
  expect(told({ missingParts: ['hand', 'hand', 'whole-arm'], weighings: [] })).toEqual([
    expect.stringContaining('More than two parts of the arms'),
  ]);
  expect(told({ missingParts: ['foot', 'foot', 'whole-leg'], weighings: [] })).toEqual([
    expect.stringContaining('More than two parts of the legs'),
  ]);
});
