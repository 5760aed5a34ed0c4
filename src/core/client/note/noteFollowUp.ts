import type { Assessment } from '#core/client/assessment/assessment.ts';
import type { ClientFacts } from '#core/client/assessment/clientFacts.ts';
import { nextChecks } from '#core/client/cautions/nextChecks.ts';
import type { Proposal } from '#core/client/prescription/proposePrescription.ts';
import { type ClientRecord, contactsMade } from '#core/client/record/record.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import { chartSources, chartWords } from '#core/client/rules/source.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { lookedAt } from './lookedAt.ts';
import { isolated, type NoteSection } from './noteSection.ts';
import { problemStatements } from './problemStatements.ts';

/** Where no number proposes a problem. */
export const noStatement = 'No statement is made from the numbers alone: the dietitian writes what was found.';

/** The client's own problems, each from a number and proposed, never stated; the clinic's as they are; then what was looked at and is no finding. */
export function diagnosis(facts: ClientFacts, proposal: Proposal, clinicStatements: readonly string[]): string[] {
  const own = [...problemStatements(facts, proposal).map(statement => `Consider: ${statement}`), ...clinicStatements];
  const below = lookedAt(facts, proposal);
  const none = proposal.kind === 'barred' ? 'Not stated until what bars a target is answered.' : noStatement;
  return [...(own.length > 0 ? own : [none]), ...(below.length === 0 ? [] : [`Looked at, no finding: ${below.join('; ')}.`])];
}

export function cautionWords(record: ClientRecord, { cautions }: Proposal): string[] {
  return cautions.map(caution => {
    const { told, because, source, sameDay } = caution;
    const made = contactsMade(record, caution).map(one => ` Told: ${isolated(one.told)}, ${one.at.slice(0, 16).replace('T', ' ')} UTC.`);
    const open = sameDay && made.length === 0 ? ' Nobody is noted as told.' : '';
    return `${chartWords(told)} Why: ${because.replace(/\.$/, '')}${chartSources([source])}.${made.join('')}${open}`;
  });
}

/** Everybody who was told of a value, also when a newer one has come since: a contact is part of the record. */
export function toldSection({ contacts }: ClientRecord): NoteSection[] {
  if (contacts.length === 0) return [];
  const paragraphs = contacts.map(({ told, at, about, note }) => {
    const what = about === undefined ? '' : ` told of ${about}`;
    const words = `${isolated(told)}${what}${note === undefined ? '' : `. ${isolated(note)}`}`;
    return `${at.slice(0, 16).replace('T', ' ')} UTC: ${words.replace(/\.$/u, '')}.`;
  });
  return [{ heading: 'Who was told', paragraphs }];
}

/** What is due next. */
export function monitoring(newest: Assessment, today: Day, rules: CareRules): string[] {
  return nextChecks(newest, today, rules).map(
    ({ item, every, lastOn, dueBy, state }) =>
      `${item}: ${state === 'overdue' ? 'overdue since' : 'due by'} ${dueBy} (${every}; ${lastOn === undefined ? 'no earlier one on record' : `last ${lastOn}`}).`,
  );
}
