import { z } from '@hono/zod-openapi';
import { damageKinds } from '#app/clientVault.ts';
import { assessmentSchema } from '#core/client/assessment/assessment.ts';
import { labResultSchema } from '#core/client/assessment/labResult.ts';
import { weightKinds } from '#core/client/assessment/vocabularies.ts';
import { weighingSchema } from '#core/client/assessment/weighing.ts';
import { dueStates } from '#core/client/cautions/nextChecks.ts';
import { analyteKeys } from '#core/client/labs/analytes.ts';
import { limits, targetItems } from '#core/client/prescription/target.ts';
import { clientRecordSchema } from '#core/client/record/clientRecordJson.ts';
import { contactSchema } from '#core/client/record/contact.ts';
import { decidedFroms, decidedKinds } from '#core/client/record/decidedTarget.ts';
import { mealShareSchema } from '#core/client/record/mealPattern.ts';
import { settings } from '#core/client/setting.ts';
import { weightBasisIds } from '#core/client/states/weightBasis.ts';
import { edgeAnswer, edgeBody, edgeDraftAnswer } from './edge.ts';
import { lineBody, proposalBody, range } from './proposalBodies.ts';

/** The number of the form that a record is written in. */
const formOf = { format: z.number() };

/** The shapes of the client's part of the interface. Assessments travel in the format of docs/formats.md and are read by the core. */
export const lockBody = z
  .object({
    state: z.enum(['open', 'locked']),
    hasPassphrase: z.boolean(),
    /** It locks after so many minutes without a key or a pointer. */
    idleMinutes: z.number(),
    /** Seconds until the next try of a passphrase is looked at. */
    waitSeconds: z.number(),
    /** Locked because nobody moved a key or a pointer for so long. */
    wasIdle: z.boolean(),
    /** Another one after each lock. */
    opening: z.string(),
  })
  .openapi('ClientLock');
export const healthBody = z
  .object({
    whole: z.number(),
    damaged: z.record(z.enum(damageKinds), z.number()),
    index: z.enum(['whole', 'missing', 'damaged']),
    writtenAt: z.string().optional(),
  })
  .openapi('ClientFileHealth');
export const erasedBody = z.array(z.object({ id: z.string(), name: z.string(), until: z.string() }));
export const assessmentBody = edgeBody(assessmentSchema, 'AssessmentJson');
export const resultsBody = {
  labs: z.array(edgeBody(labResultSchema, 'LabResultJson')),
  weighings: z.array(edgeBody(weighingSchema, 'WeighingJson')),
};
export const labResultAnswer = edgeAnswer(labResultSchema, 'LabResultJson');
/** Every record of the vault; one that cannot be read as it is kept. */
export const exportAnswer = z.array(edgeDraftAnswer(clientRecordSchema.extend(formOf), 'ClientRecordJson'));

export const clientShort = z
  .object({
    id: z.string(),
    version: z.number(),
    name: z.string(),
    isDemo: z.boolean(),
    setting: z.enum(settings).optional(),
    assessedOn: z.string().optional(),
    signedAt: z.string().optional(),
    /** Values that need contact the same day and for which nobody is noted as told. */
    openContacts: z.number(),
    overdue: z.number(),
  })
  .openapi('ClientShort');

export const clientBody = clientShort
  .extend({
    assessmentId: z.string().optional(),
    assessment: edgeAnswer(assessmentSchema, 'AssessmentJson').optional(),
    changes: z.array(z.string()).optional(),
    ...proposalBody.partial().shape,
    /** "61, on hemodialysis in center" */
    about: z.string().optional(),
    /** Every analyte on record, the newest result first told and all of them over time. */
    results: z
      .array(
        z.object({
          analyte: z.enum(analyteKeys),
          heading: z.string(),
          /** As it was entered. */
          shown: z.string(),
          /** In another unit. */
          other: z.string().optional(),
          takenOn: z.string(),
          /** In days. */
          age: z.number(),
          isTooOld: z.boolean(),
          marks: z.array(z.string()),
          out: z.enum(['above', 'below']).optional(),
          unit: z.string(),
          points: z.array(z.object({ on: z.string(), value: z.number() })),
          /** Where sources wish it to be; none where no source gives a band. */
          bands: z.array(z.object({ range, source: z.string() })),
        }),
      )
      .optional(),
    weights: z
      .array(
        z.object({
          kind: z.enum(weightKinds.keys),
          heading: z.string(),
          shown: z.string(),
          takenOn: z.string(),
          age: z.number(),
          points: z.array(z.object({ on: z.string(), value: z.number() })),
        }),
      )
      .optional(),
    nextChecks: z
      .array(
        z.object({
          item: z.string(),
          every: z.string(),
          lastOn: z.string().optional(),
          dueBy: z.string(),
          state: z.enum(dueStates),
          source: z.string(),
        }),
      )
      .optional(),
    assessments: z.array(z.object({ id: z.string(), on: z.string(), corrects: z.string().optional() })),
    prescriptions: z.array(
      z.object({
        id: z.string(),
        stands: z.boolean(),
        signedBy: z.string(),
        signedAt: z.string(),
        supersedes: z.string().optional(),
        targets: z.array(
          z.object({
            item: z.enum(targetItems),
            title: z.string(),
            kind: z.enum([...decidedKinds, 'not-told']),
            figure: z.string(),
            inShort: z.string(),
            line: lineBody.optional(),
            range: range.optional(),
            limit: z.enum(limits).optional(),
            from: z.enum(decidedFroms),
            says: z.string(),
            reason: z.string().optional(),
          }),
        ),
      }),
    ),
    contacts: z.array(contactSchema),
    mealPattern: z.array(mealShareSchema).optional(),
  })
  .openapi('Client');

/** The weight that the dietitian picks; the proposal's own when missing. */
export const weightBasis = z.enum(weightBasisIds).optional();
