import type { Assessment } from '#core/client/assessment/assessment.ts';
import { type ClientRecord, currentAssessment, type KeptNote, type Prescription, standingOf } from '#core/client/record/record.ts';
import { type Day, daysBetween } from '#core/quantity/calendarDay.ts';

/** The state that a note compares with. */
export interface Since {
  /** "the note of 2026-05-02" */
  readonly words: string;
  readonly on: Day;
  /** With the results that had been added by then; missing where it is not on record any more. */
  readonly assessment?: Assessment;
  readonly prescription?: Prescription;
}

/**
 * What an interval note looks back to: the newest kept note of an earlier day, without one the newest signature of an earlier day, without
 * one the assessment before the newest, passing over one that was corrected. What was written or signed today belongs to what is told. Undefined on the first visit.
 */
export function sinceLast(record: ClientRecord, today: Day): Since | undefined {
  const note = record.notes?.find(({ on }) => daysBetween(on, today) > 0);
  if (note !== undefined) return sinceNote(record, note);
  const signed = record.prescriptions.find(({ signed: { at } }) => daysBetween(at.slice(0, 10), today) > 0);
  if (signed !== undefined) {
    const on = signed.signed.at.slice(0, 10);
    return sinceOf(
      `the signature of ${on}`,
      on,
      asOf(record, signed.assessmentId, one => one.on <= on),
      signed,
    );
  }
  const corrected = new Set(record.assessments.map(({ corrects }) => corrects));
  const before = record.assessments.slice(1).find(({ id }) => !corrected.has(id));
  if (before === undefined) return undefined;
  const { on } = before.assessment;
  return sinceOf(
    `the assessment of ${on}`,
    on,
    asOf(record, before.id, one => one.assessmentId === before.id),
  );
}

function sinceNote(record: ClientRecord, { on, assessmentId, addedResultsId, prescriptionId }: KeptNote): Since {
  const added = record.addedResults ?? [];
  const newestKnown = added.findIndex(({ id }) => id === addedResultsId);
  const assessment = asOf(record, assessmentId, one => newestKnown >= 0 && added.indexOf(one) >= newestKnown);
  return sinceOf(
    `the note of ${on}`,
    on,
    assessment,
    record.prescriptions.find(({ id }) => id === prescriptionId),
  );
}

function sinceOf(words: string, on: Day, assessment?: Assessment, prescription?: Prescription): Since {
  return { words, on, ...(assessment === undefined ? {} : { assessment }), ...(prescription === undefined ? {} : { prescription }) };
}

type Added = NonNullable<ClientRecord['addedResults']>[number];

/** An assessment as it stood when only these results had been added. */
function asOf(record: ClientRecord, assessmentId: string, isKnown: (added: Added) => boolean): Assessment | undefined {
  // What was corrected since was never so: the correction stands in its place.
  const standing = standingOf(record, assessmentId)?.id;
  const at = record.assessments.findIndex(({ id }) => id === standing);
  if (at < 0) return undefined;
  const addedResults = (record.addedResults ?? []).filter(isKnown);
  return currentAssessment({ ...record, assessments: record.assessments.slice(at), addedResults })?.assessment;
}
