import type { Assessment } from '#core/client/assessment/assessment.ts';
import type { ClientFacts } from '#core/client/assessment/clientFacts.ts';
import { nextChecks } from '#core/client/cautions/nextChecks.ts';
import type { Proposal } from '#core/client/prescription/proposePrescription.ts';
import { type ClientRecord, contactsMade } from '#core/client/record/record.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import { chartSources } from '#core/client/rules/source.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import type { NoteSection } from './noteSection.ts';
import { problemStatements } from './problemStatements.ts';

/** The client's own problems, each from a number; then the clinic's. */
export function diagnosis(facts: ClientFacts, proposal: Proposal, clinicStatements: readonly string[]): string[] {
  const own = [...problemStatements(facts, proposal), ...clinicStatements];
  if (own.length > 0) return own;
  return [
    proposal.kind === 'barred'
      ? 'Not stated until what bars a target is answered.'
      : 'No statement is made from the numbers alone: the dietitian writes what was found.',
  ];
}

export function cautionWords(record: ClientRecord, { cautions }: Proposal): string[] {
  return cautions.map(caution => {
    const { told, because, source, sameDay } = caution;
    const made = contactsMade(record, caution).map(one => ` Told: ${one.told}, ${one.at.slice(0, 16).replace('T', ' ')} UTC.`);
    const open = sameDay && made.length === 0 ? ' Nobody is noted as told.' : '';
    return `${told} Why: ${because.replace(/\.$/, '')}${chartSources([source])}.${made.join('')}${open}`;
  });
}

/** Everybody who was told of a value, also when a newer one has come since: a contact is part of the record. */
export function toldSection({ contacts }: ClientRecord): NoteSection[] {
  if (contacts.length === 0) return [];
  const paragraphs = contacts.map(
    ({ told, at, about, note }) =>
      `${at.slice(0, 16).replace('T', ' ')} UTC: ${told}${about === undefined ? '' : ` told of ${about}`}${note === undefined ? '' : `. ${note}`}.`,
  );
  return [{ heading: 'Who was told', paragraphs }];
}

/** What is due next. */
export function monitoring(newest: Assessment, today: Day, rules: CareRules): string[] {
  return nextChecks(newest, today, rules).map(
    ({ item, every, lastOn, dueBy, state }) =>
      `${item}: ${state === 'overdue' ? 'overdue since' : 'due by'} ${dueBy} (${every}; ${lastOn === undefined ? 'no earlier one on record' : `last ${lastOn}`}).`,
  );
}
