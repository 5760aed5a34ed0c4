import { describe, expect, test } from 'vitest';
import { checkAssessment } from '../checkAssessment.ts';
import { clientWith, lab, today, weighing } from '../clientFixture.ts';
import { proposePrescription } from '../proposePrescription.ts';
import { hemodialysisClient, recordOf } from '../recordFixture.ts';
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
      'Cautions',
      'Monitoring and evaluation',
      'Notice',
    ]);
  });

  test('[NOTE-2] tells every result with its unit, day and age, and a target that was changed with its reason', () => {
    const note = chartNote(record, today);
    expect(section(note, 'Laboratory')?.paragraphs[0]).toMatch(/mmol\/L|mg\/dL/);
    for (const one of section(note, 'Laboratory')!.paragraphs) expect(one).toMatch(/\d{4}-\d{2}-\d{2}, (?:today|\d+ days? old)/);
    const sodium = section(note, 'Intervention')?.rows?.find(([name]) => name === 'Sodium');
    expect(sodium?.[1]).toBe('at most 2000 mg');
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

  test('[NOTE-6] as text it is no wider than 78 characters but for single long words, and loses nothing', () => {
    const note = chartNote(record, today)!;
    const text = noteText(note);
    for (const line of text.split('\n')) expect(line.length <= 78 || !line.trim().includes('  ')).toBe(true);
    const words = (given: string): string => given.replace(/\s+/g, ' ');
    for (const { paragraphs } of note.sections) for (const one of paragraphs) expect(words(text)).toContain(words(one));
  });
});
