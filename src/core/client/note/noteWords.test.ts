import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import type { ClientRecord } from '#core/client/record/record.ts';
import { hemodialysisClient, recordOf } from '#core/client/record/recordFixture.ts';
import { chartNote } from './chartNote.ts';
import { noteText } from './noteText.ts';

const keptOf = (more: Partial<Assessment>, others: Partial<ClientRecord> = {}): ClientRecord => ({
  ...{ id: 'a', version: 1, name: 'X.', isDemo: false, prescriptions: [], contacts: [] },
  assessments: [{ id: 'b', assessment: clientWith(more) }],
  ...others,
});
const sectionOf = (record: ClientRecord, heading: string) =>
  chartNote(record, today)!.sections.find(one => one.heading.startsWith(heading))!;
const paragraphsOf = (heading: string, more: Partial<Assessment>, others: Partial<ClientRecord> = {}) =>
  sectionOf(keptOf(more, others), heading).paragraphs;

describe('the assessment in a chart', () => {
  test('[NOTE-2] says what is known and nothing of what is not', () => {
    expect(paragraphsOf('Assessment', {})).toEqual([
      'Assessed 2026-06-15. Female, 64 years; CKD not on dialysis.',
      'Weight: 70 kg actual (on 2026-06-10, 5 days old).',
      'Weight basis: 70 kg, actual; BMI 25.7 kg/m². No edema: the actual weight.',
    ]);
    const { height: _, ...unmeasured } = clientWith();
    const record = { ...keptOf({}), assessments: [{ id: 'b', assessment: unmeasured }] };
    expect(sectionOf(record, 'Assessment').paragraphs[2]).toBe('Weight basis: 70 kg, actual. No edema: the actual weight.');
    expect(paragraphsOf('Assessment', { weighings: [] }).slice(1)).toEqual(['No weight on record.']);
  });

  test('[NOTE-2] says all that is on record, and the four newest weights', () => {
    const all = paragraphsOf('Assessment', {
      sex: 'male',
      age: { bornOn: '1960-02-01' },
      stage: { value: 'G4', on: '2026-01-10' },
      diabetes: true,
      conditions: ['frail'],
      medicines: ['nsaid'],
      supplements: ['vitamin-a'],
      appetite: 'fair',
      intake: { energyKcal: 1800, proteinG: 60 },
      urineMlPerDay: { value: 900, on: '2026-06-01' },
      symptoms: ['constipation'],
      allergies: ['sesame'],
      avoidedFoods: ['pork'],
      foodAccess: 'a shop each week',
      goals: ['eat with the family', 'walk'],
      weighings: [10, 9, 8, 7, 6].map(day => weighing('actual', 60 + day, `2026-06-${String(day).padStart(2, '0')}`)),
    });
    expect(all).toEqual([
      'Assessed 2026-06-15. Male, 66 years; CKD not on dialysis, stage G4 set on 2026-01-10, diabetes.',
      'Conditions: frail.',
      'Medicines by class: NSAID.',
      'Supplements: vitamin A.',
      expect.stringMatching(
        /^Weight: 70 kg actual \(on 2026-06-10, 5 days old\); 69 kg .*; 68 kg .*; 67 kg actual \(on 2026-06-07, 8 days old\)\.$/,
      ),
      expect.stringMatching(/^Weight basis: 70 kg, actual; BMI 25\.7/),
      'Appetite: fair.',
      'Energy eaten, as told: 1800 kcal a day.',
      'Protein eaten, as told: 60 g a day.',
      'Urine: 900 mL a day (2026-06-01).',
      'Symptoms: constipation.',
      'Allergies: sesame.',
      'Avoids: pork.',
      'Access to food: a shop each week.',
      'Goals: eat with the family; walk.',
    ]);
  });

  test('[NOTE-2] results, those in question, and those that are not used', () => {
    const labs = (...given: Assessment['labs']) => paragraphsOf('Laboratory', { labs: given });
    const asked = lab('spKtV', 3.6, '{ratio}');
    expect(labs()).toEqual(['No result on record.']);
    expect(labs(lab('phosphate', 1.4, 'mg/dL'))).toEqual(['phosphate 1.4 mg/dL (on 2026-06-05, 10 days old, in question).']);
    expect(labs(lab('potassium', 4.6, 'mmol/L'), lab('phosphate', 1.4, 'mg/dL'))).toEqual([
      'potassium 4.6 mmol/L (on 2026-06-05, 10 days old).',
      'phosphate 1.4 mg/dL (on 2026-06-05, 10 days old, in question).',
    ]);
    expect(labs(asked)).toEqual(['No result on record.']);
    expect(labs(lab('potassium', 4.6, 'mmol/L', '2026-01-01'))).toEqual([
      'potassium 4.6 mmol/L (on 2026-01-01, 165 days old).',
      'On record, not used: potassium 4.6 mmol/L (on 2026-01-01, 165 days old); potassium counts for 100 days.',
    ]);
  });
});

describe('what follows, in a chart', () => {
  test('[NOTE-4] without a number that states a problem, and while something bars a target, that is said', () => {
    expect(paragraphsOf('Diagnosis', {})).toEqual(['No statement is made from the numbers alone: the dietitian writes what was found.']);
    expect(paragraphsOf('Diagnosis', { pregnant: true })).toEqual(['Not stated until what bars a target is answered.']);
  });

  test('[NOTE-3] nobody is noted as told only where somebody must be told today', () => {
    const cautions = (value: number, contacts: ClientRecord['contacts'] = []) =>
      paragraphsOf('Cautions', { labs: [lab('potassium', value, 'mmol/L', today)] }, { contacts });
    const isOpen = (words: readonly string[]) => words.filter(one => one.endsWith('Nobody is noted as told.')).length;
    expect([isOpen(cautions(4.6)), isOpen(cautions(5.8)), isOpen(cautions(6.2))]).toEqual([0, 0, 1]);
    const made = [{ cautionId: 'potassium-6.0', told: 'Nurse B.', on: today, at: '2026-06-15T08:22:51.000Z' }];
    expect(isOpen(cautions(6.2, made))).toBe(0);
    expect(cautions(6.2, made)[0]).toMatch(/ Told: Nurse B\., 2026-06-15 08:22 UTC\.$/);
  });

  test('[NOTE-3] everybody who was told, of what, and what was said', () => {
    const at = '2026-06-12T08:22:51.000Z';
    const contact = { cautionId: 'potassium-6.0', told: 'the unit', on: '2026-06-12', at };
    expect(paragraphsOf('Who was told', {}, { contacts: [contact, { ...contact, about: 'potassium 6.3', note: 'calls back' }] })).toEqual([
      '2026-06-12 08:22 UTC: the unit.',
      '2026-06-12 08:22 UTC: the unit told of potassium 6.3. calls back.',
    ]);
  });

  test('[NOTE-5] what is due, what is overdue, and when it was last', () => {
    const due = paragraphsOf('Monitoring', {
      treatment: { setting: 'hemodialysis', place: 'in-center' },
      weighings: [weighing('dry', 70, '2026-05-01')],
      labs: [lab('pth', 300, 'pg/mL', '2026-06-01')],
    });
    expect(due).toContain('weight: overdue since 2026-06-01 (monthly; last 2026-05-01).');
    expect(due).toContain('potassium: due by 2026-06-15 (monthly; no earlier one on record).');
    expect(due).toContain('PTH: due by 2026-12-01 (every 3 to 6 months; last 2026-06-01).');
  });
});

describe('the prescription in a chart', () => {
  const record = recordOf(hemodialysisClient);
  const [signed] = record.prescriptions;
  const row = (of: ClientRecord, name: string) => sectionOf(of, 'Intervention').rows!.find(([first]) => first === name)!;

  test('[NOTE-5] proposed: a day’s figure, on which weight, what is said elsewhere, and what is to be checked', () => {
    const proposed = { ...record, prescriptions: [] };
    expect(row(proposed, 'Protein').slice(1)).toEqual([
      '72 – 86.4 g a day',
      expect.stringMatching(
        /^KDOQI 2020: 1\.0-1\.2 g\/kg, on the dry weight \(KDOQI 2020, 1C\)\. Elsewhere: KDIGO Diabetes 2022: 1\.0-1\.2 g\/kg/,
      ),
    ]);
    expect(row(proposed, 'Fluid')[1]).toBe('800 – 1300 mL (3½ – 5¼ cups, 28 – 43 fl oz) a day');
    expect(row(proposed, 'Sodium').slice(1)).toEqual([
      'under 2300 mg a day',
      expect.stringMatching(/^KDOQI 2020: under 2\.3 g \(100 mmol\) \(KDOQI 2020, 1C\)\. Elsewhere: /),
    ]);
    expect(row(proposed, 'Phosphate additives')[1]).toBe('none named on the label');
    expect(row(proposed, 'Potassium').slice(1)).toEqual([
      'withheld, no figure until checked',
      expect.stringMatching(/ To check: [^;]*[^.;]; /),
    ]);
  });

  test('[NOTE-5] signed: by whom, and of each target whose figure it is', () => {
    expect(sectionOf(record, 'Intervention').paragraphs).toEqual(['Signed by Ada Example, RDN, 2026-06-15.']);
    const plain = { ...signed!, signed: { ...signed!.signed, credentials: '' } };
    expect(sectionOf({ ...record, prescriptions: [plain] }, 'Intervention').paragraphs).toEqual(['Signed by Ada Example, 2026-06-15.']);
    expect(row(record, 'Sodium')[2]).toBe('As proposed: KDOQI 2020: under 2.3 g (100 mmol)');
    const changed = (from: 'alternative' | 'own') => {
      const targets = signed!.targets.map(one => (one.item === 'sodium' ? { ...one, from, reason: 'thirst', says: 'words' } : one));
      return row({ ...record, prescriptions: [{ ...signed!, targets }] }, 'Sodium')[2];
    };
    expect(changed('alternative')).toBe('Another guideline chosen: words Reason: thirst');
    expect(changed('own')).toBe('Own figure: words Reason: thirst');
    expect(row(record, 'Phosphate additives')[1]).toBe('none named on the label');
  });

  test('[NOTE-2] one signed for an earlier assessment says for which, and its pick of a weight holds no more', () => {
    const of = (assessmentId: string) => ({ ...record, prescriptions: [{ ...signed!, assessmentId, weightBasis: 'ideal' as const }] });
    expect(sectionOf(of('assessment-1'), 'Intervention').paragraphs[1]).toContain('It was signed for the assessment of 2026-03-02,');
    expect(sectionOf(of('gone'), 'Intervention').paragraphs[1]).toContain('It was signed for an assessment that is not on record,');
    expect(sectionOf(of('assessment-1'), 'Assessment').paragraphs.join(' ')).toContain('Weight basis: 72 kg, dry;');
    expect(sectionOf(of('assessment-2'), 'Assessment').paragraphs.join(' ')).toContain(', ideal;');
  });
});

test('[NOTE-6] a line holds 78 characters, and a table has each reason below its figure', () => {
  const line = (length: number) => `${'a'.repeat(39)} ${'b'.repeat(length - 40)}`;
  const text = noteText({
    title: 'T',
    sections: [
      { heading: 'Full', paragraphs: [line(78), line(79), ''] },
      {
        heading: 'Rows',
        paragraphs: [],
        rows: [
          ['Target', 'A day', 'Why'],
          ['Sodium', 'under 2300 mg', 'c'.repeat(77)],
          ['Fiber', '21 g'],
          ['Fluid', '1 L', 'd e'],
        ],
      },
    ],
  });
  expect(text.split('\n')).toEqual([
    'T',
    '',
    'FULL',
    line(78),
    ...line(79).split(' '),
    '',
    'ROWS',
    'Sodium: under 2300 mg',
    `  ${'c'.repeat(76)}`,
    '  c',
    'Fiber: 21 g',
    'Fluid: 1 L',
    '  d e',
    '',
  ]);
});
