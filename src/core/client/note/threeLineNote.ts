import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { nextChecks } from '#core/client/cautions/nextChecks.ts';
import { type Proposal, proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { type ClientRecord, contactsMade, currentAssessment } from '#core/client/record/record.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import { basisWords } from '#core/client/states/weightBasis.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { sentence, signedWords } from './intervalNote.ts';
import { changesSince } from './noteChanges.ts';
import { type ChartNote, cleaned } from './noteSection.ts';
import { sinceLast } from './noteSince.ts';
import { treatmentWords } from './noteTreatment.ts';
import { noteTitle } from './writtenNote.ts';

const mostChecks = 4;

/** One line each: the state and what changed, what is decided, what is next and when. Undefined without an assessment. */
export function threeLineNote(record: ClientRecord, today: Day, rules: CareRules = usualCareRules): ChartNote | undefined {
  const kept = currentAssessment(record);
  if (kept === undefined) return undefined;
  const [prescription] = record.prescriptions;
  const isForNewest = prescription?.assessmentId === kept.id;
  const proposal = proposePrescription(kept.assessment, today, isForNewest ? prescription?.weightBasis : undefined, rules);
  return cleaned({
    title: noteTitle('lines', today, record.name),
    sections: [
      { heading: 'State', paragraphs: [stateLine(record, today, proposal, rules)] },
      { heading: 'Decided', paragraphs: [prescription === undefined ? nothingSigned(proposal) : signedWords(prescription)] },
      { heading: 'Next', paragraphs: [nextLine(record, today, proposal, rules)] },
    ],
  });
}

function stateLine(record: ClientRecord, today: Day, proposal: Proposal, rules: CareRules): string {
  const { assessment } = currentAssessment(record)!;
  const basis =
    proposal.kind === 'proposal' && proposal.weight.kind === 'chosen'
      ? `, ${basisWords(proposal.weight.chosen)} (${proposal.weight.chosen.id.replaceAll('-', ' ')})`
      : '';
  const state = sentence(`${treatmentWords(assessment.treatment)}${basis}`);
  const since = sinceLast(record, today);
  if (since === undefined) return `${state} ${resultsNow(record, today, rules)}`;
  const changes = changesSince(since, assessment, record.prescriptions[0], today, rules);
  return `${state} Since ${since.words}: ${changes.length === 0 ? 'nothing on record has changed' : changes.join('; ')}.`;
}

/** On the first visit: the newest of each result. */
function resultsNow(record: ClientRecord, today: Day, rules: CareRules): string {
  const { assessment } = currentAssessment(record)!;
  if (checkAssessment(assessment, today, rules).facts.labs.length === 0) return 'No result on record.';
  const nothing = { ...assessment, labs: [], weighings: [] };
  const first = { words: '', on: today, assessment: nothing };
  const told = changesSince(first, { ...assessment, weighings: [] }, undefined, today, rules);
  return sentence(told.map(words => words.replace(/, none on record before$/u, '')).join('; '));
}

function nothingSigned(proposal: Proposal): string {
  if (proposal.kind === 'barred') return `Nothing is proposed: ${proposal.issues.map(({ told }) => told).join(' ')}`;
  return 'Nothing is signed.';
}

function nextLine(record: ClientRecord, today: Day, proposal: Proposal, rules: CareRules): string {
  const open = proposal.cautions.filter(caution => caution.sameDay && contactsMade(record, caution).length === 0);
  const toTell = open.map(({ because }) => `Tell today: ${because.replace(/\.$/u, '')}.`);
  if (proposal.kind === 'barred') return [...toTell, 'Answer what bars a target.'].join(' ');
  const checks = nextChecks(currentAssessment(record)!.assessment, today, rules);
  const due = checks
    .slice(0, mostChecks)
    .map(({ item, dueBy, state }) => `${item} ${state === 'overdue' ? `overdue since ${dueBy}` : `by ${dueBy}`}`);
  const more = checks.length > mostChecks ? `; ${checks.length - mostChecks} more later` : '';
  return [...toTell, sentence(`${due.join('; ')}${more}`)].join(' ');
}
