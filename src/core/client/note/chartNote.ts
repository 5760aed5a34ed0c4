import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { proposePrescription, standingCaution } from '#core/client/prescription/proposePrescription.ts';
import { type ClientRecord, currentAssessment } from '#core/client/record/record.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import type { Day } from '#core/quantity/calendarDay.ts';

import { labSection, otherFacts, personWords, weightParagraphs } from './noteAssessment.ts';
import { cautionWords, diagnosis, monitoring, toldSection } from './noteFollowUp.ts';
import { assessedOn, disagreement, interventionSection } from './notePrescription.ts';
import { type ChartNote, cleaned } from './noteSection.ts';
import { noteTitle } from './writtenNote.ts';

export type { ChartNote, NoteSection } from './noteSection.ts';

/**
 * A note by assessment, diagnosis, intervention, monitoring and evaluation, from the newest assessment and the prescription
 * that stands. Undefined without an assessment. `clinicStatements` are the clinic's own, added as they are; there is no
 * licensed term set in it.
 */
export function chartNote(
  record: ClientRecord,
  today: Day,
  clinicStatements: readonly string[] = [],
  rules: CareRules = usualCareRules,
): ChartNote | undefined {
  const kept = currentAssessment(record);
  if (kept === undefined) return undefined;
  const newest = kept.assessment;
  const { facts } = checkAssessment(newest, today, rules);
  const [prescription] = record.prescriptions;
  const isForNewest = prescription?.assessmentId === kept.id;
  // What was picked at the signature holds for the assessment it was picked for.
  const proposal = proposePrescription(newest, today, isForNewest ? prescription?.weightBasis : undefined, rules);
  return cleaned({
    title: noteTitle('full', today, record.name),
    sections: [
      { heading: 'Assessment', paragraphs: [...personWords(newest, today), ...weightParagraphs(facts, proposal), ...otherFacts(newest)] },
      ...labSection(facts, today, proposal),
      { heading: 'Diagnosis', paragraphs: diagnosis(facts, proposal, clinicStatements) },
      interventionSection(prescription, proposal, isForNewest ? undefined : assessedOn(record, prescription)),
      ...disagreement(prescription, proposal),
      { heading: 'Cautions', paragraphs: cautionWords(record, proposal) },
      ...toldSection(record),
      {
        heading: 'Monitoring and evaluation',
        paragraphs: proposal.kind === 'barred' ? ['Not planned until what bars a target is answered.'] : monitoring(newest, today, rules),
      },
      { heading: 'Notice', paragraphs: [standingCaution] },
    ],
  });
}
