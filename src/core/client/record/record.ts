import type { Assessment } from '#core/client/assessment/assessment.ts';
import type { Caution } from '#core/client/cautions/caution.ts';
import { weightKgFrom } from '#core/client/formulas/bodyUnits.ts';
import { isSameResult } from '#core/client/labs/readLabResult.ts';
import { Fault } from '#core/errors.ts';
import type { ClientRecord } from './clientRecordJson.ts';
import type { ContactMade } from './contact.ts';

export type { ClientRecord } from './clientRecordJson.ts';
export type { ContactMade } from './contact.ts';
export type { DecidedFrom, DecidedKind, DecidedTarget } from './decidedTarget.ts';
export type { KeptNote, NoteKind, OwnSentences, WrittenSection } from './keptNote.ts';
export { evenPattern, type MealShare } from './mealPattern.ts';
export type { Prescription } from './prescription.ts';

export type KeptAssessment = ClientRecord['assessments'][number];

/**
 * The newest assessment with the results and weights that were added since: what every target, caution and check looks at. The same
 * result in both is there once. Undefined while nobody has been assessed.
 */
export function currentAssessment({ assessments, addedResults = [] }: ClientRecord): KeptAssessment | undefined {
  const [newest] = assessments;
  if (newest === undefined) return undefined;
  const since = addedResults.filter(({ on, assessmentId }) =>
    assessmentId === undefined ? on >= newest.assessment.on : assessmentId === newest.id,
  );
  const labs = [...newest.assessment.labs];
  for (const lab of since.flatMap(one => one.labs)) if (!labs.some(known => isSameResult(known, lab))) labs.push(lab);
  const weighings = [...newest.assessment.weighings];
  for (const one of since.flatMap(({ weighings: added }) => added)) {
    if (!weighings.some(known => known.kind === one.kind && known.on === one.on && weightKgFrom(known.weight) === weightKgFrom(one.weight)))
      weighings.push(one);
  }
  return { ...newest, assessment: { ...newest.assessment, labs, weighings } };
}

/** Adds an assessment. @throws Fault assessment-not-valid where it corrects another than the newest: what stands on it would stand on air. */
export function withAssessment(record: ClientRecord, added: KeptAssessment): ClientRecord {
  if (added.corrects !== undefined && added.corrects !== record.assessments[0]?.id)
    throw new Fault('assessment-not-valid', 'the correction: expected one of the newest assessment');
  return { ...record, assessments: [added, ...record.assessments] };
}

/** An assessment by its id, or the one that corrects it: what stands in its place. */
export function standingOf(record: Pick<ClientRecord, 'assessments'>, id: string): KeptAssessment | undefined {
  const correction = record.assessments.find(({ corrects }) => corrects === id);
  return correction === undefined ? record.assessments.find(one => one.id === id) : standingOf(record, correction.id);
}

/** The newest assessment with what came in since, then the earlier ones; one that was corrected is left out. */
export function assessmentsThatStand(record: ClientRecord): readonly Assessment[] {
  const corrected = new Set(record.assessments.map(({ corrects }) => corrects));
  return [currentAssessment(record), ...record.assessments.slice(1)].flatMap(one =>
    one === undefined || corrected.has(one.id) ? [] : [one.assessment],
  );
}

/** Who was told of a caution since the day of the value that raises it, else since the newest assessment: an earlier contact was about another one. */
export function contactsMade(
  { assessments, contacts }: ClientRecord,
  { id, since }: Pick<Caution, 'id' | 'since'>,
): readonly ContactMade[] {
  const from = since ?? assessments[0]?.assessment.on ?? '';
  return contacts.filter(contact => contact.cautionId === id && contact.on >= from);
}

/** What a client must not be offered: avoided foods and allergies of the newest assessment and of the one that was signed for. */
export function foodsToAvoid(record: ClientRecord): readonly string[] {
  return [...new Set([...newestAndSignedFor(record).flatMap(({ avoidedFoods }) => avoidedFoods), ...allergiesOf(record)])];
}

/** Those of them that are allergies. */
export function allergiesOf(record: ClientRecord): readonly string[] {
  return [...new Set(newestAndSignedFor(record).flatMap(({ allergies }) => allergies))];
}

/** The newest assessment, and the one that was signed for where it is another: what forbids a food in either forbids it. */
export function newestAndSignedFor(record: ClientRecord): readonly Assessment[] {
  const { assessments, prescriptions } = record;
  const [prescription] = prescriptions;
  const signedFor = prescription === undefined ? undefined : standingOf(record, prescription.assessmentId);
  return [...new Set([assessments[0], signedFor])].flatMap(one => (one === undefined ? [] : [one.assessment]));
}
