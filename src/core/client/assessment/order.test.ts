import { describe, expect, test } from 'vitest';
import type { Assessment } from './assessment.ts';
import { checkAssessment } from './checkAssessment.ts';
import { clientWith, lab, today, weighing } from './clientFixture.ts';

const checked = (more: Partial<Assessment>) => checkAssessment(clientWith(more), today);
const codes = (more: Partial<Assessment>) => checked(more).issues.map(({ code, field }) => `${code} ${field}`);
const potassium = (value: number, on = '2026-06-10', more: Parameters<typeof lab>[4] = {}) => lab('potassium', value, 'mmol/L', on, more);
const hemodialysis = (startedOn?: string): Partial<Assessment> => ({
  treatment: { setting: 'hemodialysis', place: 'in-center', ...(startedOn === undefined ? {} : { startedOn }) },
});
const peritoneal = (startedOn?: string): Partial<Assessment> => ({
  treatment: { setting: 'peritoneal-dialysis', method: 'capd', ...(startedOn === undefined ? {} : { startedOn }) },
});
const transplant = (transplantedOn: string): Partial<Assessment> => ({ treatment: { setting: 'transplant', transplantedOn } });

describe('days that contradict each other (care rules 5)', () => {
  const born = { age: { bornOn: '1962-02-11' } };
  test.each<[string, Partial<Assessment>, readonly string[]]>([
    ['on the day of birth', { ...born, labs: [potassium(5, '1962-02-11')] }, []],
    ['the day before', { ...born, labs: [potassium(5, '1962-02-10')] }, ['wrong-order potassium']],
    // Someone of 64 years was born after 2026-06-15 less 65 years.
    ['65 years ago, at 64', { weighings: [weighing('actual', 70, '1961-06-15')] }, []],
    ['a day more, at 64', { weighings: [weighing('actual', 70, '1961-06-14')] }, ['wrong-order actual weight']],
    ['at 64 and a half', { age: { years: 64.5 }, weighings: [weighing('actual', 70, '1960-06-15')] }, []],
    ['at 120', { age: { years: 120 }, labs: [potassium(5, '1905-06-14')] }, ['wrong-order potassium']],
    ['at 121', { age: { years: 121 }, labs: [potassium(5, '1900-06-14')] }, ['impossible-value age']],
    ['at 1', { age: { years: 1 }, labs: [potassium(5, '2024-06-14')] }, ['under-18 age', 'wrong-order potassium']],
    ['at half a year', { age: { years: 0.5 }, labs: [potassium(5, '2024-06-14')] }, ['under-18 age']],
    ['dialysis begun on the day of the assessment', { ...hemodialysis('2026-06-01'), on: '2026-06-01' }, []],
    ['begun the day after', { ...hemodialysis('2026-06-02'), on: '2026-06-01' }, ['wrong-order start of dialysis']],
    ['begun today, assessed before', { ...peritoneal(today), on: '2026-06-01' }, ['wrong-order start of dialysis']],
    ['transplanted after it', { ...transplant('2026-06-02'), on: '2026-06-01' }, ['wrong-order transplant']],
    ['begun tomorrow', peritoneal('2026-06-16'), ['from-the-future start of dialysis']],
    ['transplanted tomorrow', transplant('2026-06-16'), ['from-the-future transplant']],
    ['begun on no day', hemodialysis('2026-02-30'), ['not-a-day start of dialysis']],
    ['a stage of no day', { on: '2026-01-01', stage: { value: 'G4', on: '2026-02-30' } }, ['not-a-day stage']],
    [
      'born on no day',
      { age: { bornOn: '1962-02-30' }, labs: [potassium(5, '1950-01-01')] },
      ['not-a-day born on', 'impossible-value age'],
    ],
    [
      'an assessment of tomorrow says nothing of its order',
      { on: '2026-06-16', labs: [potassium(5, '1950-01-01')] },
      ['from-the-future assessment'],
    ],
    ['an assessment of no day', { on: '2026-02-30', labs: [potassium(5, '1950-01-01')] }, ['not-a-day assessment']],
  ])('[CLT-95] %s', (_, more, expected) => {
    expect(codes(more)).toEqual(expected);
  });

  test.each<[string, Partial<Assessment>]>([
    ['urine volume', { urineMlPerDay: { value: 900, on: '1950-01-01' } }],
    ['change of RAAS inhibitor', { raasChangedOn: '1950-01-01' }],
    ['causes of high potassium checked', { potassiumSteps: { causesCheckedOn: '1950-01-01' } }],
    ['potassium additives cut', { potassiumSteps: { additivesCutOn: '1950-01-01' } }],
    ['screening', { lastScreenedOn: '1950-01-01' }],
    ['full assessment', { lastFullAssessmentOn: '1950-01-01' }],
  ])('[CLT-95] a %s before birth is asked about', (field, more) => {
    expect(codes(more)).toEqual([`wrong-order ${field}`]);
  });
});

describe('marks and limits of a result', () => {
  const before = { drawn: 'before-dialysis' } as const;
  test.each<[string, Partial<Assessment>, readonly string[]]>([
    ['before the transplant', { ...transplant('2026-06-10'), labs: [potassium(5, '2026-06-09', before)] }, []],
    ['on its day', { ...transplant('2026-06-10'), labs: [potassium(5, '2026-06-10', before)] }, ['contradiction potassium']],
    ['before peritoneal dialysis', { ...peritoneal('2026-06-10'), labs: [potassium(5, '2026-06-09', before)] }, []],
    ['after it began', { ...peritoneal('2026-06-01'), labs: [potassium(5, '2026-06-09', before)] }, ['contradiction potassium']],
    ['peritoneal dialysis of unknown begin', { ...peritoneal(), labs: [potassium(5, '2026-06-09', before)] }, ['contradiction potassium']],
    [
      'a transplant of no day',
      { ...transplant('2026-13-01'), labs: [potassium(5, '2026-06-09', before)] },
      ['not-a-day transplant', 'contradiction potassium'],
    ],
    ['limits from 0', { labs: [potassium(5, today, { lowerNormal: 0, upperNormal: 5 })] }, []],
    ['a lower limit alone', { labs: [potassium(5, today, { lowerNormal: 3.5 })] }, []],
    ['both limits the same', { labs: [potassium(5, today, { lowerNormal: 5, upperNormal: 5 })] }, ['impossible-value potassium']],
  ])('[CLT-93] %s', (_, more, expected) => {
    expect(codes(more)).toEqual(expected);
  });

  test('[CLT-93] limits that are none are told as they stand', () => {
    const told = (more: Parameters<typeof lab>[4]) => checked({ labs: [potassium(5, today, more)] }).issues[0]?.told;
    expect(told({ upperNormal: -1 })).toContain('limits none to -1 mmol/L are no range');
    expect(told({ lowerNormal: -1 })).toContain('limits -1 to none mmol/L are no range');
  });

  test('[CLT-94] of one hour two values of one analyte are asked about, until both are confirmed', () => {
    const at = (value: number, more: Parameters<typeof lab>[4] = {}) => potassium(value, today, { takenAt: '07:30', ...more });
    expect(codes({ labs: [at(5.1), lab('sodium', 138, 'mmol/L', today, { takenAt: '07:30' })] })).toEqual([]);
    expect(codes({ labs: [at(5.1, { confirmed: true }), at(5.8)] })).toEqual(['value-in-question potassium']);
    expect(codes({ labs: [at(5.1, { confirmed: true }), at(5.8, { confirmed: true })] })).toEqual([]);
    expect(codes({ labs: [at(5.1), at(5.8, { hemolyzed: true })] })).toEqual([]);
  });
});

describe('what is read of an assessment', () => {
  test('[CLT-91] a result in question is no result: it stands beside them with what it may mean', () => {
    const asked = lab('phosphate', 1.4, 'mg/dL', today);
    const { facts } = checked({ labs: [asked] });
    expect(facts.labs).toEqual([]);
    // 1.4 mmol/L by 0.3229 is 4.34 mg/dL.
    expect(facts.questioned.map(({ value, inQuestion }) => [value.toFixed(2), inQuestion])).toEqual([
      ['1.40', true],
      ['4.34', true],
    ]);
    expect(checked({ labs: [{ ...asked, confirmed: true }] }).facts).toMatchObject({ labs: [{ value: 1.4 }], questioned: [] });
    expect(checked({ labs: [potassium(48, today, { confirmed: true })] }).facts.labs).toEqual([]);
  });

  test('[CLT-18] a result has its limits in its own unit, and nothing that was not sent', () => {
    const entered = { value: 1.8, unit: 'mmol/L' };
    const plain = { analyte: 'phosphate', value: 5.5745, entered, takenOn: today, hemolyzed: false };
    expect(checked({ labs: [lab('phosphate', 1.8, 'mmol/L', today)] }).facts.labs).toStrictEqual([
      { ...plain, value: expect.closeTo(5.5745, 4) },
    ]);
    const sent = { lowerNormal: 0.8, upperNormal: 1.45, takenAt: '07:30', drawn: 'before-dialysis' } as const;
    expect(checked({ ...hemodialysis(), labs: [lab('phosphate', 1.8, 'mmol/L', today, sent)] }).facts.labs).toStrictEqual([
      {
        ...plain,
        ...sent,
        value: expect.closeTo(5.5745, 4),
        lowerNormal: expect.closeTo(2.4775, 4),
        upperNormal: expect.closeTo(4.4906, 4),
      },
    ]);
  });

  test('[CLT-18] whatever the order of a file: the newest first, of one day by analyte, the highest first, clean ones first', () => {
    const labs = [
      potassium(5.8, today),
      potassium(5.8, today, { takenAt: '07:30' }),
      potassium(5.8, today, { hemolyzed: true }),
      potassium(5.1, today),
      lab('sodium', 138, 'mmol/L', today),
      potassium(6, '2026-06-14'),
    ];
    const read = (given: Assessment['labs']) =>
      checked({ labs: given }).facts.labs.map(one => [one.takenOn, one.analyte, one.value, one.takenAt, one.hemolyzed]);
    expect(read(labs)).toEqual([
      [today, 'potassium', 5.8, undefined, false],
      [today, 'potassium', 5.8, '07:30', false],
      [today, 'potassium', 5.8, undefined, true],
      [today, 'potassium', 5.1, undefined, false],
      [today, 'sodium', 138, undefined, false],
      ['2026-06-14', 'potassium', 6, undefined, false],
    ]);
    expect(read(labs.toReversed())).toEqual(read(labs));
  });

  test('[CLT-18] weights the newest first, of one day the lightest, then by kind', () => {
    const weighings = [
      weighing('actual', 71, '2026-06-01'),
      weighing('actual', 70, '2026-06-10'),
      weighing('actual', 69, '2026-06-10'),
      weighing('usual', 70, '2026-06-10'),
    ];
    const read = (given: Assessment['weighings']) => checked({ weighings: given }).facts.weights.map(({ kg, kind }) => [kg, kind]);
    expect(read(weighings)).toEqual([
      [69, 'actual'],
      [70, 'usual'],
      [70, 'actual'],
      [71, 'actual'],
    ]);
    expect(read(weighings.toReversed())).toEqual(read(weighings));
  });

  test('[CLT-7] an age of 0 to 120 years', () => {
    expect(codes({ age: { years: 120 } })).toEqual([]);
    expect(codes({ age: { years: -1 } })).toEqual(['impossible-value age', 'under-18 age']);
    expect(codes({ age: { years: 18 } })).toEqual([]);
  });
});
