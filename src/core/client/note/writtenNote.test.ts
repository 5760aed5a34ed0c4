import { describe, expect, test } from 'vitest';
import { demoClients } from '#app/clients/demoClients.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import type { ClientRecord, KeptNote } from '#core/client/record/record.ts';
import { hemodialysisClient, recordOf } from '#core/client/record/recordFixture.ts';
import { chartNote } from './chartNote.ts';
import { intervalNote } from './intervalNote.ts';
import { noStatement } from './noteFollowUp.ts';
import { isolated } from './noteSection.ts';
import { noteText } from './noteText.ts';
import { threeLineNote } from './threeLineNote.ts';
import { cleanSections, keptNoteOf, noteHeadings, noteLength, wholeNote, writtenSections } from './writtenNote.ts';

const record = recordOf(hemodialysisClient);
const nothing = { statements: [], monitoring: [], goals: [] };

describe('a note as it is edited', () => {
  test('[NOTE-24] each section is one text, a paragraph or a row on a line, under a heading of its kind', () => {
    const sections = writtenSections(chartNote(record, today)!);
    const textOf = (heading: string) => sections.find(one => one.heading === heading)!.text.split('\n');
    expect(textOf('Intervention: nutrition prescription')[0]).toBe('Signed by Ada Example, RDN, 2026-06-15.');
    expect(textOf('Intervention: nutrition prescription')).toContain(
      'Sodium: under 2300 mg a day. As proposed: KDOQI 2020: under 2.3 g (100 mmol)',
    );
    expect(textOf('Notice')).toHaveLength(1);
    const made = { full: chartNote(record, today)!, interval: intervalNote(record, today)!, lines: threeLineNote(record, today)! };
    for (const kind of ['full', 'interval', 'lines'] as const) {
      const headings = writtenSections(made[kind]).map(({ heading }) => heading);
      expect(headings).toEqual(noteHeadings[kind].filter(one => headings.includes(one)));
      expect(headings.length).toBe(made[kind].sections.length);
    }
  });

  test('[NOTE-24] own statements take the place of "no statement"; what is empty is left out; goals stand in the interval note alone', () => {
    const sections = [
      { heading: 'Monitoring and evaluation', text: ' ' },
      { heading: 'Diagnosis', text: noStatement },
    ];
    const beside = {
      statements: [' Salty soups twice a day. ', ''],
      monitoring: [],
      goals: [{ goal: 'walk', answer: 'partly met' as const }],
    };
    expect(wholeNote('full', sections, beside)).toEqual([{ heading: 'Diagnosis', text: 'Salty soups twice a day.' }]);
    expect(wholeNote('full', sections, nothing)).toEqual([{ heading: 'Diagnosis', text: noStatement }]);
    expect(wholeNote('interval', [], { ...beside, monitoring: ['Weigh daily.'] })).toEqual([
      { heading: 'Goals and figures followed', text: 'Goal “walk”: partly met.' },
      { heading: 'Diagnosis', text: 'Salty soups twice a day.' },
      { heading: 'Monitoring and evaluation', text: 'Weigh daily.' },
    ]);
    expect(wholeNote('lines', [{ heading: 'Next', text: 'Call.' }], beside)).toEqual([{ heading: 'Next', text: 'Call.' }]);
  });

  test('[NOTE-24] control characters and signs that turn reading around are left out, line by line; length counts every section', () => {
    const dirty = [{ heading: 'Next', text: 'a\u0000b\r\n\tc\u202Ed\ne' }];
    expect(cleanSections(dirty)).toEqual([{ heading: 'Next', text: 'a b\n c d\ne' }]);
    expect(noteLength([...dirty, { heading: 'State', text: 'xyz' }])).toBe(dirty[0]!.text.length + 3);
  });
});

describe('a kept note', () => {
  const note = (id: string, more: Partial<KeptNote> = {}): KeptNote => ({
    ...{ id, kind: 'full', on: today, writtenAt: `${today}T12:34:56.000Z`, assessmentId: 'assessment-2' },
    sections: [{ heading: 'Assessment', text: 'Well.\n\nEats.' }],
    ...more,
  });

  test('[NOTE-25] says who wrote it when, what it corrects, and what corrects it', () => {
    const later = note('b', { corrects: 'a', writtenAt: `${today}T14:00:00.000Z`, by: 'Ada Example, RDN' });
    const kept = { notes: [later, note('a')] };
    const written = (one: KeptNote) => keptNoteOf(kept, one, 'A.B.').sections.at(-1)!.paragraphs;
    expect(written(later)).toEqual(['By Ada Example, RDN, 2026-06-15 14:00 UTC.', 'It corrects the note written 2026-06-15 12:34 UTC.']);
    expect(written(kept.notes[1]!)).toEqual(['2026-06-15 12:34 UTC.', 'It is corrected by the note written 2026-06-15 14:00 UTC.']);
    expect(noteText(keptNoteOf(kept, later, 'A.B.'))).toMatch(/^Nutrition note, A\.B\., 2026-06-15\n\nASSESSMENT\nWell\.\nEats\.\n/);
    expect(keptNoteOf(kept, later).title).toBe('Nutrition note, 2026-06-15');
  });

  test('[NOTE-26] a name from right to left is closed off from the day behind it; another one stays as it is', () => {
    const name = 'דנה לוי';
    expect(keptNoteOf({ notes: [] }, note('a'), name).title).toBe(`Nutrition note, \u2068${name}\u2069, 2026-06-15`);
    expect(chartNote({ ...record, name }, today)!.title).toBe(`Nutrition note, \u2068${name}\u2069, 2026-06-15`);
    expect(keptNoteOf({ notes: [] }, note('a', { by: `${name}, RDN` })).sections.at(-1)!.paragraphs[0]).toBe(
      `By \u2068${name}\u2069, RDN, 2026-06-15 12:34 UTC.`,
    );
    expect(isolated('A.B.')).toBe('A.B.');
    // Signs of order in the name itself neither open nor close anything.
    expect(isolated(`\u202E${name}\u2069`)).toBe(`\u2068${name}\u2069`);
    const goals = clientWith({ goals: ['السير كل يوم'] });
    const told = chartNote({ ...record, assessments: [{ id: 'x', assessment: goals }] }, today)!.sections[0]!.paragraphs.at(-1);
    expect(told).toBe('Goals: \u2068السير كل يوم\u2069.');
  });
});

describe('what a chart says', () => {
  const firstVisit = (assessment: Parameters<typeof clientWith>[0]): ClientRecord => ({
    ...{ id: 'r', version: 1, name: 'X.', isDemo: false, prescriptions: [], contacts: [] },
    assessments: [{ id: 'a', assessment: clientWith(assessment) }],
  });
  const section = (one: ClientRecord, heading: string) =>
    chartNote(one, today)!.sections.find(part => part.heading === heading)!.paragraphs;

  test('[NOTE-8] no note of any client of the demo tells where a figure still has to be confirmed, or calls one practice', () => {
    const all: ClientRecord[] = [record, ...demoClients(today).map(one => ({ ...one, version: 1 }))];
    for (const one of all) {
      const texts = [chartNote(one, today), intervalNote(one, today), threeLineNote(one, today)].flatMap(note =>
        note === undefined ? [] : [noteText(note)],
      );
      expect(texts).toHaveLength(3);
      for (const text of texts)
        expect(text.replace(/\s+/gu, ' ')).not.toMatch(
          /to be confirmed|from memory|as quoted|own (rule|decision)|(?<!Best )practice(?! point)/i,
        );
    }
  });

  test('[NOTE-27] a problem is proposed, never stated', () => {
    const eatsLittle = firstVisit({
      stage: { value: 'G4', on: '2026-01-10' },
      intake: { proteinG: 20 },
      labs: [lab('albumin', 4.2, 'g/dL')],
    });
    const lines = section(eatsLittle, 'Diagnosis').filter(line => !line.startsWith('Looked at'));
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) expect(line).toMatch(/^Consider: /);
  });

  test('[NOTE-27] what was looked at and is below the line is told with its line, and is no finding', () => {
    const looked = (more: Parameters<typeof clientWith>[0]) =>
      section(firstVisit(more), 'Diagnosis').find(line => line.startsWith('Looked at'));
    expect(looked({ weightLoss: { percent3Months: 4.9, percent6Months: 9.94, cause: 'unintended' } })).toBe(
      'Looked at, no finding: weight lost in 3 months 4.9%, under the line of 5%; weight lost in 6 months 9.9%, under the line of 10%.',
    );
    expect(looked({ weightLoss: { percent3Months: 5, cause: 'unintended' } })).toBeUndefined();
    expect(looked({ weighings: [weighing('actual', 70), weighing('actual', 69, '2026-05-10')] })).toBe(
      'Looked at, no finding: no weight lost in 3 months; no weight lost in 6 months.',
    );
    expect(looked({ labs: [lab('potassium', 4.6, 'mmol/L')] })).toContain(
      'potassium 4.6 mmol/L (on 2026-06-05, 10 days old), not above 5 mmol/L',
    );
    expect(looked({ labs: [lab('potassium', 5.2, 'mmol/L')] })).toContain('above 5 mmol/L once, where twice running is a finding');
    expect(looked({ labs: [lab('albumin', 4.2, 'g/dL')], muscleLoss: { percent3Months: 0 } })).toMatch(
      /protein-energy wasting, 0 of 4 groups of the published criteria met, \d not known, under the line of 3/,
    );
    expect(looked({})).toBeUndefined();
    expect(looked({ pregnant: true, labs: [lab('potassium', 4.6, 'mmol/L')] })).toBeUndefined();
  });

  // Facts 3.8: CAPD, 2 × 2 L of 1.5 %, 2 L of 2.5 % and 2 L of 4.25 % at 60 %: 195 g, 117 g, 398 kcal.
  test('[NOTE-2] the schedule, and what the dialysate gives beside what is eaten; without bags it is not known', () => {
    const bag = (liters: number, percent: number) => ({ liters, percent, labeledAs: 'dextrose' as const });
    const peritoneal = { setting: 'peritoneal-dialysis', method: 'capd' } as const;
    const told = (more: object, intake = {}) =>
      section(firstVisit({ treatment: { ...peritoneal, ...more }, ...intake }), 'Assessment').filter(line =>
        /^(Treatment|Dialysate)/.test(line),
      );
    expect(told({ bags: [bag(4, 1.5), bag(2, 2.5), bag(2, 4.25)], startedOn: '2025-01-01' }, { intake: { energyKcal: 1500 } })).toEqual([
      'Treatment: CAPD, since 2025-01-01.',
      'Dialysate: 4 L of 1.5 % dextrose, 2 L of 2.5 % dextrose, 2 L of 4.25 % dextrose; about 398 kcal a day from it (60 % of 195 g absorbed; 40 to 80 % is real). With 1500 kcal eaten: about 1898 kcal a day.',
    ]);
    expect(told({ icodextrin: true })[1]).toBe(
      'Dialysate: no bags on record; what energy it gives is not known. Icodextrin is used; its energy is not counted.',
    );
    expect(told({ bags: [bag(2, 9)] })[1]).toBe('Dialysate: 2 L of 9 % dextrose; what energy it gives is not known.');
    const treatment = {
      setting: 'hemodialysis',
      place: 'home',
      sessionsPerWeek: 1,
      sessionHours: 4.5,
      ultrafiltrationLimitMlPerKgH: 13,
    } as const;
    expect(section(firstVisit({ treatment }), 'Assessment')).toContain(
      'Treatment: home, 1 session a week, 4.5 hours each, ultrafiltration up to 13 mL/kg an hour.',
    );
    expect(section(firstVisit({ treatment: { setting: 'ckd-not-on-dialysis', conservative: true } }), 'Assessment')).toContain(
      'Treatment: conservative care.',
    );
  });

  test('[NOTE-22] in the full note withheld is told apart from no limit, and a range of one figure is one figure', () => {
    const proposed = chartNote({ ...record, prescriptions: [] }, today)!.sections.flatMap(({ rows = [] }) => rows);
    const figureOf = (name: string) => proposed.find(([first]) => first === name)![1];
    expect([figureOf('Potassium'), figureOf('Phosphorus')]).toEqual(['withheld, no figure until checked', 'no limit proposed']);
    expect(figureOf('Fiber')).toBe('21 g a day');
  });

  test('[NOTE-2] a hemolyzed sample is told as an upper bound', () => {
    expect(section(record, 'Laboratory results')).toContain(
      'On record, not used: potassium 6.1 mmol/L (on 2026-05-20, 26 days old, hemolyzed); a hemolyzed sample is an upper bound: it sets no limit and is not in range.',
    );
  });
});
