import { describe, expect, test } from 'vitest';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { hemodialysisClient, recordOf } from '#core/client/record/recordFixture.ts';
import { chartNote } from './chartNote.ts';
import { noteText } from './noteText.ts';
import { problemStatements } from './problemStatements.ts';

const section = (note: ReturnType<typeof chartNote>, heading: string) => note?.sections.find(one => one.heading.startsWith(heading));

describe('the chart note', () => {
  const record = recordOf(hemodialysisClient, [
    {
      item: 'sodium',
      unit: 'mg',
      range: { lo: 0, hi: 2000 },
      limit: 'at-most',
      from: 'own',
      reason: 'thirst between sessions',
      says: 'set by the dietitian',
    },
  ]);

  test('[NOTE-1] goes by assessment, diagnosis, intervention, monitoring and evaluation, with the notice last', () => {
    expect(chartNote(record, today)?.sections.map(({ heading }) => heading)).toEqual([
      'Assessment',
      'Laboratory results',
      'Diagnosis',
      'Intervention: nutrition prescription',
      'Where guidelines disagree',
      'Cautions',
      'Monitoring and evaluation',
      'Notice',
    ]);
  });

  test('[NOTE-2] a prescription that was signed for an earlier assessment says so', () => {
    expect(section(chartNote(record, today), 'Intervention')?.paragraphs).toHaveLength(1);
    const [first] = record.assessments;
    const later = { id: 'later', assessment: { ...first!.assessment, on: today } };
    const note = chartNote({ ...record, assessments: [later, ...record.assessments] }, today);
    expect(section(note, 'Intervention')?.paragraphs[1]).toBe(
      `It was signed for the assessment of ${first!.assessment.on}, not for the newest one: look whether it still holds.`,
    );
  });

  test('[NOTE-2] stands on the weight that was picked at the signature', () => {
    const picked = { ...record.prescriptions[0]!, weightBasis: 'ideal' as const };
    const note = chartNote({ ...record, prescriptions: [picked] }, today);
    expect(JSON.stringify(section(note, 'Assessment'))).toContain('ideal');
    expect(JSON.stringify(section(chartNote(record, today), 'Assessment'))).not.toContain('ideal');
  });

  test('[NOTE-2] tells every result with its unit, day and age, and a target that was changed with its reason', () => {
    const note = chartNote(record, today);
    expect(section(note, 'Laboratory')?.paragraphs[0]).toMatch(/mmol\/L|mg\/dL/);
    for (const one of section(note, 'Laboratory')!.paragraphs) expect(one).toMatch(/\d{4}-\d{2}-\d{2}, (?:today|\d+ days? old)/);
    const sodium = section(note, 'Intervention')?.rows?.find(([name]) => name === 'Sodium');
    expect(sodium?.[1]).toBe('at most 2000 mg a day');
    expect(sodium?.[2]).toContain('Reason: thirst between sessions');
  });

  test('[NOTE-3] a value that needs contact says who was told, or that nobody is noted', () => {
    const urgent = {
      ...record,
      assessments: [{ id: 'a', assessment: { ...hemodialysisClient, labs: [lab('potassium', 6.8, 'mmol/L', today)] } }],
    };
    expect(section(chartNote(urgent, today), 'Cautions')?.paragraphs.join(' ')).toContain('Nobody is noted as told.');
    const { cautions } = proposePrescription(urgent.assessments[0]!.assessment, today);
    const told = {
      ...urgent,
      contacts: [{ cautionId: cautions.find(({ sameDay }) => sameDay)!.id, told: 'the unit', on: today, at: '2026-06-15T09:30:00.000Z' }],
    };
    expect(section(chartNote(told, today), 'Cautions')?.paragraphs.join(' ')).toContain('Told: the unit, 2026-06-15 09:30 UTC.');
    const longAgo = { ...told, contacts: told.contacts.map(contact => ({ ...contact, on: '2025-01-10' })) };
    expect(section(chartNote(longAgo, today), 'Cautions')?.paragraphs.join(' ')).toContain('Nobody is noted as told.');
  });

  test('[NOTE-3] a day that is none is said so, and no check is planned from it', () => {
    const broken = { ...record, assessments: [{ id: 'a', assessment: { ...hemodialysisClient, age: { bornOn: '1960-02-31' } } }] };
    const text = noteText(chartNote(broken, today)!);
    expect(text).not.toContain('NaN');
    expect(text).toContain('born 1960-02-31, which is no day');
    expect(text).toContain('Not planned until');
  });

  test('[NOTE-2] a signed note tells what other guidelines say, holds 78 columns and carries no control character', () => {
    const odd = { ...record, name: `A\u0000B\u001b[2J` };
    const note = chartNote(odd, today)!;
    expect(section(note, 'Where guidelines disagree')?.paragraphs.length).toBeGreaterThan(0);
    expect(note.title).not.toMatch(/\p{Cc}/u);
    const long = { ...odd, assessments: [{ id: 'a', assessment: { ...hemodialysisClient, goals: ['x'.repeat(200)] } }] };
    const lines = noteText(chartNote(long, today)!).split('\n').slice(1);
    expect(lines.join('')).toContain('x'.repeat(78));
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(78);
  });

  test.each([
    ['6 % in 6 months is under the bound', { percent6Months: 6 }, undefined],
    ['12 % in 6 months counts beside 2 % in 3', { percent3Months: 2, percent6Months: 12 }, '12% in 6 months'],
    ['5 % in 3 months', { percent3Months: 5 }, '5% in 3 months'],
  ])('[NOTE-4] weight loss by the wasting criteria (Fouque 2008): %s', (_, weightLoss, said) => {
    const assessment = { ...clientWith(), weightLoss: { ...weightLoss, cause: 'unintended' as const } };
    const lost = problemStatements(checkAssessment(assessment, today).facts, proposePrescription(assessment, today)).find(text =>
      text.startsWith('Unintended weight loss'),
    );
    if (said === undefined) expect(lost).toBeUndefined();
    else expect(lost).toContain(said);
    // Nobody said whether it was wanted, or fluid: that is asked, and nothing is stated (care rules 3).
    const asked = { ...clientWith(), weightLoss };
    expect(problemStatements(checkAssessment(asked, today).facts, proposePrescription(asked, today)).join()).not.toContain('weight loss');
  });

  test('[NOTE-4] problems are stated from the client’s own numbers, and the clinic’s own words are added as they are', () => {
    const poor = clientWith({
      intake: { proteinG: 30 },
      appetite: 'poor',
      weighings: [weighing('actual', 70)],
      stage: { value: 'G4', on: '2026-01-01' },
    });
    const { facts } = checkAssessment(poor, today);
    const statements = problemStatements(facts, proposePrescription(poor, today));
    for (const statement of statements) expect(statement).toMatch(/\d/);
    const wellFed = clientWith({ intake: { proteinG: 200, energyKcal: 4000 }, stage: { value: 'G4', on: '2026-01-01' } });
    expect(problemStatements(checkAssessment(wellFed, today).facts, proposePrescription(wellFed, today))).toEqual([]);
    expect(section(chartNote(record, today, ['Clinic statement 7.']), 'Diagnosis')?.paragraphs).toContain('Clinic statement 7.');
  });

  test('[NOTE-5] without an assessment there is none; without a signature it says so; barred, it says why', () => {
    expect(chartNote({ ...record, assessments: [] }, today)).toBeUndefined();
    expect(section(chartNote({ ...record, prescriptions: [] }, today), 'Intervention')?.paragraphs).toEqual(['Proposed, not signed.']);
    const barred = { ...record, prescriptions: [], assessments: [{ id: 'a', assessment: { ...hemodialysisClient, pregnant: true } }] };
    expect(section(chartNote(barred, today), 'Intervention')?.paragraphs.join(' ')).toContain('Pregnancy');
  });

  test('[NOTE-6] as text it is no wider than 78 characters, and loses nothing', () => {
    const note = chartNote(record, today)!;
    const text = noteText(note);
    for (const line of text.split('\n')) expect(line.length <= 78 || !line.trim().includes('  ')).toBe(true);
    const words = (given: string): string => given.replace(/\s+/g, ' ');
    for (const { paragraphs } of note.sections) for (const one of paragraphs) expect(words(text)).toContain(words(one));
  });
});

describe('what a chart says of causes, sources and contacts', () => {
  const taken = (value: number, on: string, more = {}) => lab('potassium', value, 'mmol/L', on, more);
  const client = clientWith({
    treatment: { setting: 'hemodialysis', place: 'in-center' },
    weighings: [weighing('dry', 70)],
    medicines: ['phosphate-binder', 'nsaid'],
    labs: [
      taken(5.8, '2026-06-10'),
      taken(6.3, '2026-06-12', { hemolyzed: true }),
      lab('phosphate', 6.2, 'mg/dL', '2026-06-10'),
      lab('phosphate', 6, 'mg/dL', '2026-05-10'),
    ],
  });

  test('[NOTE-8] no sample and no treatment is the cause of a problem; the client’s own cause is', () => {
    const stated = problemStatements(checkAssessment(client, today).facts, proposePrescription(client, today)).join('\n');
    expect(stated).toContain('More potassium than is cleared, related to NSAID, as shown by potassium 5.8 mmol/L');
    expect(stated).not.toMatch(/related to[^\n]*(hemolyzed|binder)/);
  });

  test('[NOTE-8] what is to be confirmed, practice and own rules stand on the screen alone; who was told stays', () => {
    const contacts = [
      { cautionId: 'potassium-6.0', about: 'potassium 6.3 mmol/L', told: 'Nurse B.', on: '2026-06-12', at: '2026-06-12T08:22:00.000Z' },
    ];
    const kept = {
      id: 'a',
      version: 1,
      name: 'X.',
      isDemo: false,
      assessments: [{ id: 'b', assessment: client }],
      prescriptions: [],
      contacts,
    };
    const text = noteText(chartNote(kept, today)!);
    expect(text).not.toMatch(/to be confirmed|no source|as quoted|own rule/);
    expect(text).toContain('KDOQI 2020');
    expect(text.replace(/\s+/g, ' ')).toContain('Nurse B. told of potassium 6.3 mmol/L');
  });
});
