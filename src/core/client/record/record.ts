import type { Assessment, LabResult, Weighing } from '#core/client/assessment/assessment.ts';
import type { Caution } from '#core/client/cautions/caution.ts';
import { weightKgFrom } from '#core/client/formulas/bodyUnits.ts';
import { isSameResult } from '#core/client/labs/readLabResult.ts';
import type { Limit, TargetItem, TargetUnit } from '#core/client/prescription/target.ts';
import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import type { Interval } from '#core/quantity/interval.ts';
import type { Day } from '../calendarDay.ts';

/** What is kept of one client. Assessments and signed prescriptions are added, never changed. */
export interface ClientRecord {
  readonly id: string;
  /** Grows with each change; sent back with the next one. */
  readonly version: number;
  /** As the dietitian calls the client: initials or a code are enough. */
  readonly name: string;
  readonly isDemo: boolean;
  /** Newest first. */
  readonly assessments: readonly KeptAssessment[];
  /** Results and weights that came in since an assessment, newest first; they join the newest assessment of their day or before. */
  readonly addedResults?: readonly AddedResults[];
  /** Newest first; the first that is signed stands. */
  readonly prescriptions: readonly Prescription[];
  /** Who was told of a value that needs contact the same day. */
  readonly contacts: readonly ContactMade[];
  /** Parts of the day's targets that a meal may take; even over three meals and a snack when missing. */
  readonly mealPattern?: readonly MealShare[];
  /** What was last written for this client's handout, as docs/formats.md has it; read anew each time. */
  readonly handout?: Readonly<Record<string, unknown>>;
}

export interface KeptAssessment {
  readonly id: string;
  readonly assessment: Assessment;
}

/** What came in between two assessments: results and weights alone. */
export interface AddedResults {
  readonly id: string;
  /** The day on which they were added. */
  readonly on: Day;
  /** The assessment that stood then. A later one was made with them in sight: they belong to it only if it holds them. */
  readonly assessmentId?: string;
  readonly labs: readonly LabResult[];
  readonly weighings: readonly Weighing[];
}

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
  return { id: newest.id, assessment: { ...newest.assessment, labs, weighings } };
}

/** A figure, no limit, or held back until something is checked. */
export const decidedKinds = ['bounded', 'no-limit', 'withheld'] as const;
export type DecidedKind = (typeof decidedKinds)[number];

/** As proposed, another guideline's figure, or the dietitian's own. */
export const decidedFroms = ['proposal', 'alternative', 'own'] as const;
export type DecidedFrom = (typeof decidedFroms)[number];

/**
 * A day's target as the dietitian decided it: bounded by a range (open upwards or not), without limit, or withheld until something is checked.
 */
export interface DecidedTarget {
  readonly item: TargetItem;
  readonly unit: TargetUnit;
  /** Missing in records of form 1, where only a range tells: without one nobody can say whether it was withheld or without limit. */
  readonly kind?: DecidedKind;
  readonly range?: Interval;
  readonly limit?: Limit;
  /** What it was before the dietitian changed it; the same when she took it over. */
  readonly from: DecidedFrom;
  /** Why it is not as proposed, or why this position was chosen. Needed unless `from` is `proposal`. */
  readonly reason?: string;
  /** The words and sources of the position that was taken. */
  readonly says: string;
}

export interface Prescription {
  readonly id: string;
  readonly assessmentId: string;
  /** The weight that the dietitian had picked when she signed; the proposal's own when missing. */
  readonly weightBasis?: WeightBasisId;
  readonly targets: readonly DecidedTarget[];
  readonly signed: { readonly by: string; readonly credentials: string; readonly at: string };
  /** The prescription that this one takes the place of. */
  readonly supersedes?: string;
}

export interface ContactMade {
  readonly cautionId: string;
  /** The value that raised it, in words; missing in older records. */
  readonly about?: string;
  readonly told: string;
  readonly on: Day;
  readonly at: string;
  readonly note?: string;
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
export function newestAndSignedFor({ assessments, prescriptions }: ClientRecord): readonly Assessment[] {
  const signedFor = assessments.find(({ id }) => id === prescriptions[0]?.assessmentId);
  return [...new Set([assessments[0], signedFor])].flatMap(one => (one === undefined ? [] : [one.assessment]));
}

export interface MealShare {
  readonly name: string;
  /** Percent of the day. */
  readonly percent: number;
}

export const evenPattern: readonly MealShare[] = [
  { name: 'breakfast', percent: 25 },
  { name: 'lunch', percent: 30 },
  { name: 'dinner', percent: 35 },
  { name: 'snack', percent: 10 },
];
