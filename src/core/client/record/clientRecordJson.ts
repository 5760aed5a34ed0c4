import { z } from 'zod';
import { assessmentSchema, resultsSchema } from '#core/client/assessment/assessment.ts';
import { Fault, type Reading } from '#core/errors.ts';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import { isNewerForm } from '#core/json/presentForm.ts';
import { readWhole } from '#core/json/readWhole.ts';
import { contactSchema } from './contact.ts';
import { keptNoteSchema } from './keptNote.ts';
import { mealShareSchema } from './mealPattern.ts';
import { type Prescription, prescriptionOf, prescriptionSchema, prescriptionToJson } from './prescription.ts';
import { recordSteps } from './upgradeRecord.ts';

const words = z.string();

/** What came in between two assessments: results and weights alone. */
const addedResults = z.object({
  id: words,
  /** The day on which they were added. */
  on: words,
  /** The assessment that stood then. A later one was made with them in sight: they belong to it only if it holds them. */
  assessmentId: words.exactOptional(),
  ...resultsSchema.shape,
});

/** What is kept of one client. Assessments and signed prescriptions are added, never changed. */
export const clientRecordSchema = z.object({
  id: words,
  /** Grows with each change; sent back with the next one. */
  version: z.number(),
  /** As the dietitian calls the client: initials or a code are enough. */
  name: words,
  isDemo: z.boolean(),
  /** Newest first. One that corrects another takes its place; the other stays as it was. */
  assessments: z.array(z.object({ id: words, assessment: assessmentSchema, corrects: words.exactOptional() })),
  /** Results and weights that came in since an assessment, newest first; they join the newest assessment of their day or before. */
  addedResults: z.array(addedResults).exactOptional(),
  /** Newest first; the first that is signed stands. */
  prescriptions: z.array(prescriptionSchema),
  /** Who was told of a value that needs contact the same day. */
  contacts: z.array(contactSchema),
  /** Notes for the chart as they were kept, newest first; added, never changed. */
  notes: z.array(keptNoteSchema).exactOptional(),
  /** Parts of the day's targets that a meal may take; even over three meals and a snack when missing. */
  mealPattern: z.array(mealShareSchema).exactOptional(),
  /** What was last written for this client's handout, as docs/formats.md has it; read anew each time. */
  handout: z.record(z.string(), z.unknown()).exactOptional(),
});

/** As it is kept. */
export type ClientRecordJson = DeepReadonly<z.input<typeof clientRecordSchema>> & { readonly format: number };

export type ClientRecord = Omit<ClientRecordJson, 'format' | 'prescriptions'> & { readonly prescriptions: readonly Prescription[] };

/**
 * A kept record, of whichever form. Whole or not at all: a key that nobody reads would be lost with the next change, so it is refused too.
 * The issues quote the record.
 */
export function clientRecordFromJson(json: unknown): Reading<ClientRecord | undefined> {
  const { value, issues } = readWhole(clientRecordSchema, json, recordSteps);
  if (value === undefined) return { value, issues };
  const { prescriptions, ...record } = value;
  return { value: { ...record, prescriptions: prescriptions.map(prescriptionOf) }, issues };
}

/** @throws Fault client-record-damaged, client-record-newer, which tell nothing of the client */
export function wholeClientRecord(json: unknown): ClientRecord {
  const { value, issues } = clientRecordFromJson(json);
  if (isNewerForm(issues)) throw new Fault('client-record-newer', 'The record was written by a newer program.');
  if (value === undefined) throw new Fault('client-record-damaged', 'What is kept is no whole client record.');
  return value;
}

export function clientRecordToJson(record: ClientRecord): ClientRecordJson {
  return { ...record, format: recordSteps.length + 1, prescriptions: record.prescriptions.map(prescriptionToJson) };
}
