import { z } from 'zod';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';

/** By assessment, diagnosis, intervention and monitoring; what changed since the last one; or one line each of state, decision and next step. */
export const noteKinds = ['full', 'interval', 'lines'] as const;
export type NoteKind = (typeof noteKinds)[number];

const words = z.string();

/** A part of a note as the dietitian has written it; its heading is not hers to change. */
export const writtenSectionSchema = z.object({ heading: words, text: words });
export type WrittenSection = DeepReadonly<z.output<typeof writtenSectionSchema>>;

/** Sentences of her own, which the next note of this client begins with. */
export const ownSentencesSchema = z.object({ statements: z.array(words), monitoring: z.array(words) });
export type OwnSentences = DeepReadonly<z.output<typeof ownSentencesSchema>>;

/** A note as it was kept: never changed; a later one may say that it corrects it. */
export const keptNoteSchema = z.object({
  id: words,
  kind: z.enum(noteKinds),
  /** The day, and the moment as the clock had it. */
  on: words,
  writtenAt: words,
  sections: z.array(writtenSectionSchema),
  by: words.exactOptional(),
  /** What stood when it was kept: the assessment, the newest results added to it, and the prescription. */
  assessmentId: words,
  addedResultsId: words.exactOptional(),
  prescriptionId: words.exactOptional(),
  own: ownSentencesSchema.exactOptional(),
  /** The earlier note that this one corrects. */
  corrects: words.exactOptional(),
});
export type KeptNote = DeepReadonly<z.output<typeof keptNoteSchema>>;
