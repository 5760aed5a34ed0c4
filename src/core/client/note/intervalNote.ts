import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { proposePrescription, standingCaution } from '#core/client/prescription/proposePrescription.ts';
import { targetItems } from '#core/client/prescription/target.ts';
import { decidedWords, targetNames } from '#core/client/prescription/targetWords.ts';
import { type ClientRecord, currentAssessment, type DecidedTarget, type Prescription } from '#core/client/record/record.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { type Followed, followedFigures } from './followedFigures.ts';
import { changesSince } from './noteChanges.ts';
import { cautionWords, diagnosis, monitoring, toldSection } from './noteFollowUp.ts';
import { type ChartNote, cleaned, isolated } from './noteSection.ts';
import { sinceLast } from './noteSince.ts';
import { noteTitle } from './writtenNote.ts';

/**
 * A note of what is otherwise than at the last one: results, weights, medicines, targets; then each goal and figure that is followed, met,
 * partly, not or not known yet; then what is due. Undefined without an assessment.
 */
export function intervalNote(record: ClientRecord, today: Day, rules: CareRules = usualCareRules): ChartNote | undefined {
  const kept = currentAssessment(record);
  if (kept === undefined) return undefined;
  const newest = kept.assessment;
  const [prescription] = record.prescriptions;
  const isForNewest = prescription?.assessmentId === kept.id;
  const proposal = proposePrescription(newest, today, isForNewest ? prescription?.weightBasis : undefined, rules);
  const { facts } = checkAssessment(newest, today, rules);
  const since = sinceLast(record, today);
  const then = since?.assessment && checkAssessment(since.assessment, today, rules).facts;
  const own = proposal.cautions.filter(({ isOwn }) => isOwn);
  const contacts = since === undefined ? record.contacts : record.contacts.filter(({ on }) => on >= since.on);
  return cleaned({
    title: noteTitle('interval', today, record.name),
    sections: [
      { heading: 'What changed', paragraphs: changeParagraphs(record, today, rules) },
      {
        heading: 'Goals and figures followed',
        paragraphs: followedFigures(facts, then, prescription?.targets ?? []).map(followedWords),
      },
      { heading: 'Diagnosis', paragraphs: diagnosis(facts, proposal, []) },
      { heading: 'Nutrition prescription', paragraphs: [prescription === undefined ? 'Nothing is signed.' : signedWords(prescription)] },
      ...(own.length === 0 ? [] : [{ heading: 'Cautions', paragraphs: cautionWords(record, { ...proposal, cautions: own }) }]),
      ...toldSection({ ...record, contacts }),
      {
        heading: 'Monitoring and evaluation',
        paragraphs: proposal.kind === 'barred' ? ['Not planned until what bars a target is answered.'] : monitoring(newest, today, rules),
      },
      { heading: 'Notice', paragraphs: [standingCaution] },
    ],
  });
}

function changeParagraphs(record: ClientRecord, today: Day, rules: CareRules): readonly string[] {
  const since = sinceLast(record, today);
  if (since === undefined) return ['No earlier note, signature or assessment to compare with.'];
  const changes = changesSince(since, currentAssessment(record)!.assessment, record.prescriptions[0], today, rules);
  const begin = `Since ${since.words}`;
  if (since.assessment === undefined)
    return [`${begin}, whose assessment is not on record any more: what changed is not known.`, ...changes.map(sentence)];
  return changes.length === 0 ? [`${begin} nothing on record has changed.`] : [`${begin}:`, ...changes.map(sentence)];
}

/** With a capital and a stop; "eGFR" and "spKt/V" begin as they are written. */
export function sentence(words: string): string {
  const isName = /^\S+\p{Lu}/u.test(words);
  return `${isName ? words.charAt(0) : words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

function followedWords({ what, outcome, because }: Followed): string {
  return sentence(`${what}: ${outcome}; ${because}`);
}

/** "Signed by Ada Example, RDN, 2026-06-15: energy 1800 – 2520 kcal; … To be checked, no figure: potassium. No limit: calcium." */
export function signedWords({ signed: { by, credentials, at }, targets }: Prescription): string {
  const inOrder = targetItems.flatMap(item => targets.filter(one => one.item === item));
  const name = ({ item }: DecidedTarget): string => targetNames[item].toLowerCase();
  const without = (kind: DecidedTarget['kind']) => inOrder.filter(one => one.range === undefined && one.kind === kind).map(name);
  const figures = inOrder.filter(({ range }) => range !== undefined).map(target => `${name(target)} ${decidedWords(target)}`);
  const rest = [
    ['Withheld until checked', without('withheld')],
    ['No limit', without('no-limit')],
    ['No figure', without(undefined)],
  ] as const;
  const who = [by, credentials]
    .filter(part => part !== '')
    .map(isolated)
    .join(', ');
  return [
    `Signed by ${who}, ${at.slice(0, 10)}, for a day: ${figures.join('; ')}.`,
    ...rest.flatMap(([words, names]) => (names.length === 0 ? [] : [`${words}: ${names.join(', ')}.`])),
  ].join(' ');
}
