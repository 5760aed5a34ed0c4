import { describe, expect, it } from 'vitest';
import { demoClients } from '#app/clients/demoClients.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import { possibleReadings } from '#core/client/labs/labValue.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import type { Setting } from '../setting.ts';
import type { Assessment, LabResult, Weighing } from './assessment.ts';
import { checkAssessment } from './checkAssessment.ts';
import { clientWith, lab, today, weighing } from './clientFixture.ts';

// Mistyped results and bodies, with what is to come of each, written from the table of care rules 5 before they were run.

const treatments: Readonly<Record<Setting, Assessment['treatment']>> = {
  'ckd-not-on-dialysis': { setting: 'ckd-not-on-dialysis' },
  hemodialysis: { setting: 'hemodialysis', place: 'in-center', sessionsPerWeek: 3, sessionHours: 4, startedOn: '2024-01-08' },
  'peritoneal-dialysis': { setting: 'peritoneal-dialysis', method: 'capd', startedOn: '2025-02-03' },
  transplant: { setting: 'transplant', transplantedOn: '2025-09-01' },
};
const off = 'ckd-not-on-dialysis';
const hd = 'hemodialysis';
const pd = 'peritoneal-dialysis';

function issuesOf(assessment: Assessment): readonly string[] {
  return checkAssessment(assessment, today).issues.map(({ kind, code, told }) => `${kind} ${code}: ${told}`);
}

type Outcome = 'nothing' | 'refused' | RegExp;

function expectOutcome(issues: readonly string[], outcome: Outcome): void {
  if (outcome === 'nothing') expect(issues).toEqual([]);
  else if (outcome === 'refused') expect(issues).toEqual([expect.stringMatching(/^refusal impossible-value/)]);
  else expect(issues).toEqual([expect.stringMatching(outcome)]);
}

describe('mistyped results', () => {
  const cases: readonly (readonly [Analyte, number, string, Setting, Outcome])[] = [
    ['potassium', 4.8, 'mmol/L', off, 'nothing'],
    ['potassium', 4.8, 'mEq/L', hd, 'nothing'],
    ['potassium', 9.5, 'mmol/L', hd, 'nothing'],
    ['potassium', 48, 'mmol/L', hd, /^question .*decimal point left out \(4\.8 mmol\/L\)/],
    ['potassium', 35, 'mEq/L', off, /^question .*decimal point left out \(3\.5 mEq\/L\)/],
    ['potassium', 61, 'mmol/L', off, 'refused'],
    ['potassium', 10, 'mmol/L', off, 'refused'],
    ['potassium', 1.4, 'mmol/L', off, 'refused'],
    ['potassium', -4, 'mmol/L', off, 'refused'],
    ['sodium', 138, 'mmol/L', off, 'nothing'],
    ['sodium', 14, 'mmol/L', off, 'refused'],
    ['sodium', 181, 'mmol/L', off, 'refused'],
    ['phosphate', 5.5, 'mg/dL', hd, 'nothing'],
    ['phosphate', 2.0, 'mg/dL', hd, 'nothing'],
    ['phosphate', 1.4, 'mg/dL', hd, /^question unit-in-question.*was it mmol\/L\?/],
    ['phosphate', 1.78, 'mmol/L', hd, 'nothing'],
    ['phosphate', 2.5, 'mmol/L', hd, 'nothing'],
    ['phosphate', 3.6, 'mmol/L', hd, /^question unit-in-question.*was it mg\/dL\?/],
    ['phosphate', 5.5, 'mmol/L', hd, /^question unit-in-question.*cannot be: was it mg\/dL\?/],
    ['phosphate', 0.5, 'mg/dL', hd, /^question unit-in-question.*cannot be: was it mmol\/L\?/],
    ['phosphate', 16, 'mg/dL', hd, 'refused'],
    ['calcium', 9.2, 'mg/dL', hd, 'nothing'],
    ['calcium', 2.3, 'mmol/L', hd, 'nothing'],
    ['calcium', 9.2, 'mmol/L', hd, /^question unit-in-question.*was it mg\/dL\?/],
    ['calcium', 2.3, 'mg/dL', hd, /^question unit-in-question.*was it mmol\/L\?/],
    ['calcium', 1.25, 'mmol/L', hd, /^question .*was ionized calcium meant\?/],
    ['calcium', 1.05, 'mmol/L', hd, /^question .*was ionized calcium meant\?/],
    ['calcium', 17, 'mg/dL', hd, 'refused'],
    ['magnesium', 2.0, 'mg/dL', off, 'nothing'],
    ['magnesium', 0.8, 'mmol/L', off, 'nothing'],
    ['magnesium', 0.8, 'mg/dL', off, /^question unit-in-question.*was it mmol\/L\?/],
    ['magnesium', 1.2, 'mg/dL', off, 'nothing'],
    ['glucose', 95, 'mg/dL', off, 'nothing'],
    ['glucose', 45, 'mg/dL', off, 'nothing'],
    ['glucose', 30, 'mg/dL', off, /^question unit-in-question.*was it mmol\/L\?/],
    ['glucose', 6.1, 'mg/dL', off, /^question unit-in-question.*cannot be: was it mmol\/L\?/],
    ['glucose', 6.1, 'mmol/L', off, 'nothing'],
    ['glucose', 40, 'mmol/L', off, /^question unit-in-question.*was it mg\/dL\?/],
    ['glucose', 110, 'mmol/L', off, /^question unit-in-question.*cannot be: was it mg\/dL\?/],
    ['creatinine', 2.4, 'mg/dL', off, 'nothing'],
    ['creatinine', 180, 'umol/L', off, 'nothing'],
    ['creatinine', 180, 'mg/dL', off, /^question unit-in-question.*was it umol\/L\?/],
    ['creatinine', 2.1, 'umol/L', off, /^question unit-in-question.*was it mg\/dL\?/],
    ['creatinine', 0.1, 'mg/dL', off, 'refused'],
    ['ureaNitrogen', 8, 'mg/dL', off, 'nothing'],
    ['ureaNitrogen', 8, 'mg/dL', hd, /^question unit-in-question.*was it mmol\/L\?/],
    ['ureaNitrogen', 9, 'mg/dL', pd, /^question unit-in-question.*was it mmol\/L\?/],
    ['ureaNitrogen', 60, 'mg/dL', hd, 'nothing'],
    ['ureaNitrogen', 22, 'mmol/L', hd, 'nothing'],
    ['ureaNitrogen', 64, 'mmol/L', hd, /^question unit-in-question.*was it mg\/dL\?/],
    ['ureaNitrogen', 251, 'mg/dL', hd, 'refused'],
    ['pth', 420, 'pg/mL', hd, 'nothing'],
    ['pth', 9, 'pg/mL', hd, /^question unit-in-question.*was it pmol\/L\?/],
    ['pth', 9, 'ng/L', off, /^question unit-in-question.*was it pmol\/L\?/],
    ['pth', 45, 'pmol/L', hd, 'nothing'],
    ['pth', 371, 'pmol/L', hd, /^question unit-in-question.*was it pg\/mL\?/],
    ['ferritin', 480, 'ng/mL', hd, 'nothing'],
    ['ferritin', 5001, 'ng/mL', hd, 'refused'],
    ['urineAcr', 320, 'mg/g', off, 'nothing'],
    ['urineAcr', 0, 'mg/g', off, 'nothing'],
    ['urineAcr', 900, 'mg/mmol', off, /^question unit-in-question.*was it mg\/g\?/],
    ['urineAcr', 35, 'mg/mmol', off, 'nothing'],
    ['spKtV', 1.42, '{ratio}', hd, 'nothing'],
    ['spKtV', 3.6, '{ratio}', hd, /^question .*cannot be: was Kt\/V of a week meant\?/],
    ['spKtV', 6, '{ratio}', hd, 'refused'],
    ['spKtV', 1.9, '{ratio}', pd, /^question .*was Kt\/V of a week meant\?/],
    ['weeklyKtV', 1.9, '{ratio}', pd, 'nothing'],
    ['weeklyKtV', 1.4, '{ratio}', hd, /^question .*was Kt\/V of one session meant\?/],
    ['weeklyKtV', 0.4, '{ratio}', pd, /^question .*cannot be: was Kt\/V of one session meant\?/],
    ['weeklyKtV', 6, '{ratio}', pd, 'refused'],
    ['albumin', 3.9, 'g/dL', hd, 'nothing'],
    ['albumin', 39, 'g/L', hd, 'nothing'],
    ['albumin', 39, 'g/dL', hd, /^question unit-in-question.*was it g\/L\?/],
    ['albumin', 3.9, 'g/L', hd, /^question unit-in-question.*was it g\/dL\?/],
    ['bicarbonate', 22, 'mmol/L', off, 'nothing'],
    ['bicarbonate', 4, 'mmol/L', off, 'refused'],
    ['hba1c', 7.2, '%', off, 'nothing'],
    ['hba1c', 55, 'mmol/mol', off, 'nothing'],
    ['hba1c', 7.2, 'mmol/mol', off, /^question unit-in-question.*was it %\?/],
    ['hba1c', 55, '%', off, /^question unit-in-question.*was it mmol\/mol\?/],
    ['hemoglobin', 10.8, 'g/dL', hd, 'nothing'],
    ['hemoglobin', 108, 'g/dL', hd, /^question unit-in-question.*was it g\/L\?/],
    ['hemoglobin', 3.9, 'g/dL', hd, 'refused'],
  ];

  it.each(cases)('[CLT-90] %s %s %s, %s: as the table says', (analyte, value, unit, setting, outcome) => {
    expectOutcome(issuesOf(clientWith({ treatment: treatments[setting], labs: [lab(analyte, value, unit)] })), outcome);
  });

  it('[CLT-91] a question bars every target until its result is confirmed; what cannot be is not confirmed', () => {
    const asked = lab('phosphate', 1.4, 'mg/dL');
    expect(proposePrescription(clientWith({ labs: [asked] }), today).kind).toBe('barred');
    expect(proposePrescription(clientWith({ labs: [{ ...asked, confirmed: true }] }), today).kind).toBe('proposal');
    const [issue] = checkAssessment(clientWith({ labs: [lab('potassium', 4.8, 'mmol/L'), asked] }), today).issues;
    expect(issue?.answeredBy).toEqual({ list: 'labs', at: 1 });
    const cannotBe = lab('potassium', 48, 'mmol/L', '2026-06-05', { confirmed: true });
    expect(checkAssessment(clientWith({ labs: [cannotBe] }), today).issues).toMatchObject([{ kind: 'question' }]);
    expect(proposePrescription(clientWith({ labs: [cannotBe] }), today).kind).toBe('barred');
  });

  it.each<readonly [Analyte, number, string, readonly number[]]>([
    ['potassium', 4.8, 'mmol/L', [4.8]],
    ['potassium', 58, 'mmol/L', [5.8]],
    ['potassium', 70, 'mmol/L', []],
    // 35 mmol/L by 0.0555.
    ['glucose', 35, 'mg/dL', [35, 630.63]],
    // 0.9 mmol/L by 0.4114.
    ['magnesium', 0.9, 'mg/dL', [0.9, 2.19]],
    ['calcium', 1.25, 'mmol/L', [5.01]],
    ['albumin', 39, 'g/dL', [3.9]],
  ])('[CLT-92] %s %s %s may mean %j', (analyte, value, unit, readings) => {
    expect(possibleReadings(analyte, value, unit).map(one => Math.round(one * 100) / 100)).toEqual(readings);
  });

  const marked = (more: Partial<LabResult>, setting: Setting, analyte: Analyte = 'potassium', unit = 'mmol/L') =>
    clientWith({ treatment: treatments[setting], labs: [lab(analyte, 5, unit, '2026-06-05', more)] });
  it.each<readonly [string, Assessment, Outcome]>([
    ['before dialysis on hemodialysis', marked({ drawn: 'before-dialysis' }, hd), 'nothing'],
    ['before dialysis, not on it', marked({ drawn: 'before-dialysis' }, off), /^question contradiction/],
    ['after dialysis, transplanted since', marked({ drawn: 'after-dialysis', takenOn: '2025-08-01' }, 'transplant'), 'nothing'],
    ['after dialysis, after the transplant', marked({ drawn: 'after-dialysis' }, 'transplant'), /^question contradiction/],
    [
      'BUN of 8 after dialysis',
      clientWith({ treatment: treatments[hd], labs: [lab('ureaNitrogen', 8, 'mg/dL', '2026-06-05', { drawn: 'after-dialysis' })] }),
      'nothing',
    ],
    ['hemolyzed blood', marked({ hemolyzed: true }, hd), 'nothing'],
    ['hemolyzed urine', marked({ hemolyzed: true }, off, 'urineAcr', 'mg/g'), /^question contradiction/],
    ['limits of the laboratory', marked({ lowerNormal: 3.5, upperNormal: 5.1 }, hd), 'nothing'],
    ['limits the wrong way round', marked({ lowerNormal: 5.1, upperNormal: 3.5 }, hd), 'refused'],
    ['a limit under 0', marked({ upperNormal: -1 }, hd), 'refused'],
    ['hour 25:99', marked({ takenAt: '25:99' }, hd), /^refusal not-an-hour/],
    ['hour 07:30', marked({ takenAt: '07:30' }, hd), 'nothing'],
  ])('[CLT-93] marks and limits: %s', (_, assessment, outcome) => expectOutcome(issuesOf(assessment), outcome));

  it('[CLT-94] two values of one hour are a question; of one day without an hour, or in two units, none', () => {
    const at = (value: number, unit: string, takenAt?: string) =>
      lab('potassium', value, unit, '2026-06-05', takenAt === undefined ? {} : { takenAt });
    expect(issuesOf(clientWith({ labs: [at(5.1, 'mmol/L', '07:30'), at(5.8, 'mmol/L', '07:30')] }))).toEqual([
      expect.stringMatching(/^question value-in-question: potassium of 2026-06-05 07:30 stands twice: 5\.1 mmol\/L and 5\.8 mmol\/L/),
    ]);
    expect(issuesOf(clientWith({ labs: [at(5.1, 'mmol/L'), at(5.8, 'mmol/L')] }))).toEqual([]);
    expect(issuesOf(clientWith({ labs: [at(5.1, 'mmol/L', '07:30'), at(5.1, 'mEq/L', '07:30')] }))).toEqual([]);
    expect(issuesOf(clientWith({ labs: [at(5.1, 'mmol/L', '07:30'), at(5.8, 'mmol/L', '19:30')] }))).toEqual([]);
  });
});

describe('impossible bodies and days', () => {
  const kg = (value: number, more: Partial<Weighing> = {}): Weighing => ({ ...weighing('actual', value), ...more });
  const lb = (value: number): Weighing => ({ weight: { value, unit: 'lb' }, kind: 'actual', on: '2026-06-10' });
  const weighed = (...weighings: readonly Weighing[]) => clientWith({ weighings });
  const on = (setting: Setting, more: Partial<Assessment> = {}) => clientWith({ treatment: treatments[setting], ...more });
  const session = (more: object) => clientWith({ treatment: { setting: 'hemodialysis', place: 'in-center', ...more } });

  // Everybody is 165 cm tall where nothing else is said: BMI 13 is 35.4 kg, 14 is 38.1 kg, 50 is 136.1 kg, 60 is 163.4 kg.
  it.each<readonly [string, Assessment, Outcome]>([
    ['an ordinary weight', weighed(kg(70)), 'nothing'],
    ['154 lb', weighed(lb(154)), 'nothing'],
    ['a high BMI that pounds do not explain better', weighed(kg(130)), 'nothing'],
    [
      '165 kg: BMI 60.6, in pounds 27.5',
      weighed(kg(165)),
      /^question unit-in-question: actual weight 165 kg: was it lb\? 165 lb is 74\.8 kg/,
    ],
    ['the same, answered', weighed(kg(165, { unitConfirmed: true })), 'nothing'],
    ['70 lb: BMI 11.7, in kg 25.7', weighed(lb(70)), /^question unit-in-question: actual weight 70 lb: was it kg\? 70 kg is 154\.3 lb/],
    ['250 kg: BMI 91.8, in pounds 41.7', weighed(kg(250)), /^question unit-in-question/],
    ['34 kg: BMI 12.5, no other unit', weighed(kg(34)), /^question value-in-question.*BMI of 12\.5/],
    ['36 kg: BMI 13.2', weighed(kg(36)), 'nothing'],
    ['29 kg', weighed(kg(29)), 'refused'],
    ['300 kg without a height', clientWith({ weighings: [kg(700)] }), 'refused'],
    ['150 kg beside 68 kg', weighed(kg(68), kg(150, { on: '2026-05-01' })), /^question unit-in-question.*150 kg: was it lb/],
    ['5 ft 5 in', clientWith({ height: { feet: 5, inches: 5 } }), 'nothing'],
    ['5 ft 11.5 in', clientWith({ height: { feet: 5, inches: 11.5 } }), 'nothing'],
    ['5 ft 12 in', clientWith({ height: { feet: 5, inches: 12 } }), 'refused'],
    ['5.5 ft 6 in', clientWith({ height: { feet: 5.5, inches: 6 } }), 'refused'],
    ['1.65 cm', clientWith({ height: { value: 1.65, unit: 'cm' } }), /^question unit-in-question: Height 1\.65 cm cannot be: was it m\?/],
    ['65 cm', clientWith({ height: { value: 65, unit: 'cm' } }), /^question unit-in-question.*was it in\?/],
    ['165 in', clientWith({ height: { value: 165, unit: 'in' } }), /^question unit-in-question.*was it cm\?/],
    ['urine 0: anuria', clientWith({ urineMlPerDay: { value: 0, on: today } }), 'nothing'],
    ['urine 400 mL', clientWith({ urineMlPerDay: { value: 400, on: today } }), 'nothing'],
    ['urine 1.2 mL', clientWith({ urineMlPerDay: { value: 1.2, on: today } }), /^question unit-in-question.*liters meant \(1200 mL\)/],
    ['urine 6001 mL', clientWith({ urineMlPerDay: { value: 6001, on: today } }), 'refused'],
    ['intake 1500 kcal, 50 g', clientWith({ intake: { energyKcal: 1500, proteinG: 50 } }), 'nothing'],
    ['intake 7500 "kcal"', clientWith({ intake: { energyKcal: 7500 } }), /^refusal impossible-value.*Was it kilojoules\?/],
    ['intake -100 kcal', clientWith({ intake: { energyKcal: -100 } }), 'refused'],
    ['protein 301 g', clientWith({ intake: { proteinG: 301 } }), 'refused'],
    ['loss of 6 %', clientWith({ weightLoss: { percent3Months: 6 } }), 'nothing'],
    ['loss of 51 %', clientWith({ weightLoss: { percent6Months: 51 } }), 'refused'],
    ['loss of -5 %', clientWith({ weightLoss: { percent3Months: -5 } }), /^refusal impossible-value.*A loss has no sign/],
    ['4 hours, 3 a week', session({ sessionHours: 4, sessionsPerWeek: 3 }), 'nothing'],
    ['240 hours', session({ sessionHours: 240 }), /^refusal impossible-value.*Was it minutes\?/],
    ['8 sessions a week', session({ sessionsPerWeek: 8 }), 'refused'],
    ['0 sessions a week', session({ sessionsPerWeek: 0 }), 'refused'],
    ['after dialysis, not on it', weighed({ ...kg(70), kind: 'after-dialysis' }), /^question contradiction/],
    ['after dialysis on it', on(hd, { weighings: [{ ...kg(70), kind: 'after-dialysis' }] }), 'nothing'],
    ['after drain, not on dialysis', weighed({ ...kg(70), kind: 'after-drain' }), /^question contradiction/],
    ['tomorrow', clientWith({ labs: [lab('potassium', 5, 'mmol/L', '2026-06-16')] }), /^refusal from-the-future/],
    [
      'a result before birth',
      clientWith({ age: { bornOn: '1962-02-11' }, labs: [lab('potassium', 5, 'mmol/L', '1952-06-05')] }),
      /^question wrong-order: potassium is dated 1952-06-05, before the day of birth/,
    ],
    [
      'a weight 70 years ago of someone of 64',
      clientWith({ weighings: [kg(70, { on: '1956-06-10' })] }),
      /^question wrong-order: actual weight is dated 1956-06-10, before the birth/,
    ],
    [
      'a transplant before birth',
      clientWith({ age: { bornOn: '1980-02-11' }, treatment: { setting: 'transplant', transplantedOn: '1979-01-01' } }),
      /^question wrong-order: transplant/,
    ],
    [
      'a stage before birth',
      clientWith({ age: { bornOn: '1980-02-11' }, stage: { value: 'G4', on: '1979-01-01' } }),
      /^question wrong-order: stage/,
    ],
    [
      'dialysis begun after the assessment of it',
      clientWith({ on: '2026-06-01', treatment: { setting: 'hemodialysis', place: 'home', startedOn: '2026-06-08' } }),
      /^question wrong-order: start of dialysis \(2026-06-08\) lies after the assessment/,
    ],
    [
      'three parts of the legs',
      clientWith({ missingParts: ['whole-leg', 'lower-leg-with-foot', 'foot'] }),
      /^refusal impossible-value: More than two parts of the legs/,
    ],
    ['both feet', clientWith({ missingParts: ['foot', 'foot'] }), 'nothing'],
    ['a result newer than its assessment', clientWith({ on: '2026-06-01', labs: [lab('potassium', 5, 'mmol/L')] }), 'nothing'],
  ])('[CLT-95] %s', (_, assessment, outcome) => expectOutcome(issuesOf(assessment), outcome));

  it('[CLT-96] an age of 0, or none, is asked for and never taken', () => {
    expect(issuesOf(clientWith({ age: { years: 0 } }))).toContainEqual(
      expect.stringMatching(/^question value-in-question: The age is 0: was it left blank/),
    );
    expect(proposePrescription(clientWith({ age: { years: 0 } }), today).kind).toBe('barred');
  });

  it('[CLT-97] nothing at all, and 500 results, raise no question', () => {
    const { height: _, ...nothing } = clientWith({ weighings: [] });
    expect(issuesOf(nothing)).toEqual([]);
    const labs = Array.from({ length: 500 }, (_one, at) =>
      lab('potassium', 4 + (at % 20) / 10, 'mmol/L', `2026-0${1 + (at % 5)}-${10 + (at % 15)}`),
    );
    expect(issuesOf(on(hd, { labs }))).toEqual([]);
  });

  it('[CLT-97] ordinary assessments raise none: the clients of the demo', () => {
    for (const { id, assessments } of demoClients(today))
      for (const { assessment } of assessments) expect(issuesOf(assessment), id).toEqual([]);
  });
});
