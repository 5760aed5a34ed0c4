import { describe, expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import type { ClientRecord, KeptNote } from '#core/client/record/record.ts';
import { hemodialysisClient, recordOf } from '#core/client/record/recordFixture.ts';
import { intervalNote } from './intervalNote.ts';
import { noteText } from './noteText.ts';
import { threeLineNote } from './threeLineNote.ts';

const note: KeptNote = {
  ...{ id: 'n1', kind: 'full', on: '2026-05-02', writtenAt: '2026-05-02T08:00:00.000Z', assessmentId: 'a' },
  sections: [{ heading: 'Assessment', text: 'Well.' }],
};
const before = clientWith({
  on: '2026-05-01',
  treatment: { setting: 'hemodialysis', place: 'in-center', sessionsPerWeek: 3, sessionHours: 4 },
  weighings: [weighing('dry', 73, '2026-05-01')],
  labs: [
    lab('potassium', 5.1, 'mmol/L', '2026-05-01'),
    lab('phosphate', 5, 'mg/dL', '2026-05-01'),
    lab('albumin', 3.9, 'g/dL', '2026-05-01'),
  ],
  medicines: ['nsaid', 'phosphate-binder'],
  conditions: ['hypertension'],
  appetite: 'good',
});
const recordWith = (now: Partial<Assessment>, more: Partial<ClientRecord> = {}): ClientRecord => ({
  ...{ id: 'r', version: 1, name: 'X.', isDemo: false, prescriptions: [], contacts: [], notes: [note] },
  assessments: [
    { id: 'b', assessment: { ...before, on: today, ...now } },
    { id: 'a', assessment: before },
  ],
  ...more,
});
const paragraphs = (record: ClientRecord, heading: string) =>
  intervalNote(record, today)!.sections.find(one => one.heading === heading)?.paragraphs;
const changed = (now: Partial<Assessment>, more: Partial<ClientRecord> = {}) => paragraphs(recordWith(now, more), 'What changed');

describe('what changed', () => {
  test('[NOTE-20] what is taken beside meals, binders, a loss of weight and goals are told; a correction is no change', () => {
    const told = changed({
      binders: [{ binder: 'calcium-acetate', unitMg: 667, unitsPerDay: 6 }],
      addedFoods: [{ food: 'tube-feeding', energyKcal: 500, daysPerWeek: 7 }],
      weightLoss: { percent3Months: 8, cause: 'unintended' },
      goals: ['eat at noon'],
    })!.join(' ');
    for (const words of ['calcium acetate, 667 mg, 6 a day', 'tube feeding', '8 % in 3 months', 'eat at noon'])
      expect(told).toContain(words);
    // What the note was written from was wrong: the correction stands in its place, and nothing changed since.
    const corrected = recordWith(
      {},
      {
        assessments: [
          { id: 'b', assessment: { ...before, labs: [], medicines: [] }, corrects: 'a' },
          { id: 'a', assessment: before },
        ],
      },
    );
    expect(paragraphs(corrected, 'What changed')!.join(' ')).not.toMatch(/stopped|→/);
  });

  test('[NOTE-20] results old and new with their days, in one unit; weights with the difference; lists begun and stopped', () => {
    expect(
      changed({
        labs: [
          ...before.labs,
          lab('potassium', 6.1, 'mmol/L', '2026-05-20', { hemolyzed: true }),
          lab('potassium', 5.8, 'mmol/L'),
          lab('phosphate', 2.1, 'mmol/L'),
          lab('egfr', 9, 'mL/min/1.73 m²'),
        ],
        weighings: [...before.weighings, weighing('dry', 72)],
        medicines: ['phosphate-binder', 'trimethoprim'],
        conditions: [],
        appetite: 'fair',
        treatment: { setting: 'hemodialysis', place: 'home', sessionsPerWeek: 5 },
      }),
    ).toEqual([
      'Since the note of 2026-05-02:',
      'Treatment: hemodialysis, in center, 3 sessions a week, 4 hours each → hemodialysis, home, 5 sessions a week.',
      'Potassium 5.1 mmol/L (2026-05-01) → 6.1 mmol/L (2026-05-20, hemolyzed) → 5.8 mmol/L (2026-06-05).',
      // 2.1 mmol/L is 6.504 mg/dL.
      'Phosphate 5 mg/dL (2026-05-01) → 6.504 mg/dL (2026-06-05).',
      'eGFR 9 mL/min/1.73 m² (2026-06-05), none on record before.',
      'Dry weight 73 kg (2026-05-01) → 72 kg (2026-06-10), 1 kg less.',
      'Appetite: good → fair.',
      'Medicines: begun trimethoprim; stopped NSAID.',
      'Conditions: no longer on record hypertension.',
    ]);
  });

  test('[NOTE-20] nothing changed is said; the same facts typed again are no change', () => {
    expect(changed({})).toEqual(['Since the note of 2026-05-02 nothing on record has changed.']);
    expect(changed({ appetite: 'fair', urineMlPerDay: { value: 300, on: today } })).toEqual([
      'Since the note of 2026-05-02:',
      'Appetite: good → fair.',
      'Urine: not on record → 300 mL a day.',
    ]);
    expect(paragraphs({ ...recordWith({}, { notes: [] }), assessments: [{ id: 'a', assessment: before }] }, 'What changed')).toEqual([
      'No earlier note, signature or assessment to compare with.',
    ]);
  });

  test('[NOTE-20] results that were added after the note are new, also on its day; those before it are not', () => {
    const added = (id: string, value: number) => ({
      id,
      on: '2026-05-02',
      assessmentId: 'a',
      labs: [lab('potassium', value, 'mmol/L', '2026-05-02')],
      weighings: [],
    });
    const of = (addedResultsId?: string) =>
      paragraphs(
        {
          ...recordWith({}),
          assessments: [{ id: 'a', assessment: before }],
          addedResults: [added('late', 5.6), added('early', 5.4)],
          notes: [addedResultsId === undefined ? note : { ...note, addedResultsId }],
        },
        'What changed',
      );
    expect(of('early')![1]).toBe('Potassium 5.4 mmol/L (2026-05-02) → 5.6 mmol/L (2026-05-02).');
    expect(of()![1]).toBe('Potassium 5.1 mmol/L (2026-05-01) → 5.4 mmol/L (2026-05-02) → 5.6 mmol/L (2026-05-02).');
    expect(of('late')).toEqual(['Since the note of 2026-05-02 nothing on record has changed.']);
  });

  test('[NOTE-20] it looks back to the last note of an earlier day, else to a signature, else to the assessment before', () => {
    const begin = (more: Partial<ClientRecord>) => changed({}, more)![0];
    const signed = recordOf(hemodialysisClient).prescriptions[0]!;
    const signedOn = (day: string) => ({ ...signed, assessmentId: 'a', signed: { ...signed.signed, at: `${day}T09:00:00.000Z` } });
    expect(begin({ notes: [{ ...note, id: 'n2', on: today }, note] })).toContain('Since the note of 2026-05-02');
    expect(begin({ notes: [], prescriptions: [signedOn('2026-05-20')] })).toContain('Since the signature of 2026-05-20');
    expect(begin({ notes: [], prescriptions: [signedOn(today)] })).toContain('Since the assessment of 2026-05-01');
    const [newest, older] = recordWith({}).assessments;
    const first = { id: 'first', assessment: { ...before, on: '2026-04-01' } };
    expect(begin({ notes: [], assessments: [{ ...newest!, corrects: 'a' }, older!, first] })).toContain(
      'Since the assessment of 2026-04-01',
    );
    expect(begin({ notes: [{ ...note, assessmentId: 'gone' }] })).toContain('is not on record any more: what changed is not known');
  });

  test('[NOTE-20] a target that was signed otherwise, with its reason', () => {
    const [first] = recordOf(hemodialysisClient).prescriptions;
    const old = { ...first!, id: 'p1', assessmentId: 'a', signed: { ...first!.signed, at: '2026-05-01T09:00:00.000Z' } };
    const targets = old.targets.map(one =>
      one.item === 'sodium'
        ? { ...one, range: { lo: 0, hi: 2000 }, limit: 'at-most' as const, from: 'own' as const, reason: 'thirst' }
        : one,
    );
    const later = { ...old, id: 'p2', targets, signed: { ...old.signed, at: '2026-06-15T09:00:00.000Z' } };
    expect(changed({}, { prescriptions: [later, old], notes: [{ ...note, prescriptionId: 'p1' }] })).toEqual([
      'Since the note of 2026-05-02:',
      'Sodium target: under 2300 mg → at most 2000 mg, signed 2026-06-15 (thirst).',
    ]);
    expect(changed({}, { prescriptions: [{ ...old, id: 'p3' }, old], notes: [{ ...note, prescriptionId: 'p1' }] })![1]).toBe(
      'Targets signed again 2026-05-01, as before.',
    );
    expect(changed({}, { prescriptions: [later] })![1]).toBe('Targets signed 2026-06-15, none before.');
  });
});

describe('the notes in short', () => {
  test('[NOTE-20] who was told since then, and no one before', () => {
    const contact = (on: string, told: string) => ({ cautionId: 'potassium-6.0', told, on, at: `${on}T08:00:00.000Z` });
    const told = paragraphs(
      recordWith({}, { contacts: [contact('2026-06-01', 'Nurse B.'), contact('2026-04-01', 'Nurse A.')] }),
      'Who was told',
    );
    expect(told).toEqual(['2026-06-01 08:00 UTC: Nurse B.']);
  });

  test('[NOTE-22] withheld, no limit and a figure are told apart in one line; one figure is one figure', () => {
    const [signed] = recordOf(hemodialysisClient, [
      {
        item: 'protein',
        unit: 'g',
        kind: 'bounded',
        range: { lo: 80, hi: 80 },
        limit: 'within',
        from: 'own',
        reason: 'as agreed',
        says: '',
      },
    ]).prescriptions;
    const line = threeLineNote(recordWith({}, { prescriptions: [signed!] }), today)!.sections[1]!.paragraphs[0]!;
    expect(line).toContain('protein 80 g;');
    expect(line).toContain('Withheld until checked: potassium, calcium. No limit: phosphorus.');
  });

  test('[NOTE-23] three lines: state and changes, decision, next step and its day', () => {
    const record = recordWith({ labs: [...before.labs, lab('potassium', 6.8, 'mmol/L', today)] });
    const { sections } = threeLineNote(record, today)!;
    expect(sections.map(({ heading, paragraphs: lines }) => [heading, lines.length])).toEqual([
      ['State', 1],
      ['Decided', 1],
      ['Next', 1],
    ]);
    const [state, decided, next] = sections.map(one => one.paragraphs[0]);
    expect(state).toBe(
      'Hemodialysis, in center, 3 sessions a week, 4 hours each, 73 kg (dry). Since the note of 2026-05-02: potassium 5.1 mmol/L (2026-05-01) → 6.8 mmol/L (2026-06-15).',
    );
    expect(decided).toBe('Nothing is signed.');
    expect(next).toMatch(
      /^Tell today: potassium 6\.8 mmol\/L \(on 2026-06-15, today\)\. .* overdue since 2026-06-01; .*; \d+ more later\.$/,
    );
  });

  test('[NOTE-23] on a first visit it says what is on record; barred it says by what; without an assessment there is none', () => {
    const first = { ...recordWith({}, { notes: [] }), assessments: [{ id: 'a', assessment: before }] };
    expect(threeLineNote(first, '2026-05-01')!.sections[0]!.paragraphs[0]).toContain(
      '73 kg (dry). Potassium 5.1 mmol/L (2026-05-01); phosphate 5 mg/dL (2026-05-01); albumin 3.9 g/dL (2026-05-01).',
    );
    expect(threeLineNote({ ...first, assessments: [{ id: 'a', assessment: clientWith() }] }, today)!.sections[0]!.paragraphs[0]).toBe(
      'CKD not on dialysis, 70 kg (actual). No result on record.',
    );
    const barred = threeLineNote({ ...first, assessments: [{ id: 'a', assessment: clientWith({ pregnant: true }) }] }, today)!;
    expect(barred.sections[1]!.paragraphs[0]).toMatch(/^Nothing is proposed: Pregnancy/);
    expect(barred.sections[2]!.paragraphs[0]).toBe('Answer what bars a target.');
    const none = { ...first, assessments: [] };
    expect([threeLineNote(none, today), intervalNote(none, today)]).toEqual([undefined, undefined]);
  });

  test('[NOTE-20] it ends with what is due and the notice, and is 78 characters wide', () => {
    const made = intervalNote(recordWith({}), today)!;
    expect(made.title).toBe('Interval nutrition note, X., 2026-06-15');
    expect(made.sections.map(({ heading }) => heading)).toEqual([
      ...['What changed', 'Goals and figures followed', 'Diagnosis', 'Nutrition prescription', 'Monitoring and evaluation', 'Notice'],
    ]);
    for (const line of noteText(made).split('\n')) expect(line.length).toBeLessThanOrEqual(78);
  });
});
