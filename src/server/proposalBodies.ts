import { z } from '@hono/zod-openapi';
import { assessmentIssueCodes, assessmentIssueKinds } from '#core/client/assessment/assessmentIssue.ts';
import { contactKinds } from '#core/client/cautions/caution.ts';
import { limits, targetItems, targetKinds, targetUnitWords } from '#core/client/prescription/target.ts';
import { weightBasisIds } from '#core/client/states/weightBasis.ts';

/** What is proposed from an assessment, as the interface tells it. */

export const range = z.tuple([z.number(), z.number().nullable()]);
const positionBody = z.object({
  says: z.string(),
  sources: z.array(z.string()),
  toBeConfirmed: z.boolean(),
  range: range.optional(),
  limit: z.enum(limits).optional(),
  figure: z.string().optional(),
});
/** As a line of a table has room for it. */
export const lineBody = z.object({ basis: z.string().optional(), why: z.string(), source: z.string() });
const targetBody = z.object({
  item: z.enum(targetItems),
  title: z.string(),
  unit: z.enum(targetUnitWords),
  kind: z.enum(targetKinds),
  figure: z.string(),
  inShort: z.string(),
  line: lineBody,
  /** Whether it is proposed otherwise than when the prescription that stands was signed; missing without one. */
  differsSinceSigned: z.boolean().optional(),
  range: range.optional(),
  limit: z.enum(limits).optional(),
  perKg: z.string().optional(),
  weightBasis: z.string().optional(),
  needsChoice: z.boolean(),
  says: z.string(),
  reasons: z.array(z.string()),
  /** What has to be looked at before a figure can be proposed. */
  toCheck: z.array(z.string()),
  sources: z.array(z.string()),
  toBeConfirmed: z.boolean(),
  alternatives: z.array(positionBody),
});

export const proposalBody = z
  .object({
    standingCaution: z.string(),
    cautions: z.array(
      z.object({
        id: z.string(),
        told: z.string(),
        because: z.string(),
        source: z.string(),
        sameDay: z.boolean(),
        /** From this client's own values or record. */
        isOwn: z.boolean(),
        contact: z.enum(contactKinds).optional(),
        /** The day of the value: who was told before was told of another one. */
        since: z.string().optional(),
      }),
    ),
    labs: z.array(z.string()),
    issues: z.array(
      z.object({
        kind: z.enum(assessmentIssueKinds),
        code: z.enum(assessmentIssueCodes),
        told: z.string(),
        /** The row that answers it with a tick. */
        answeredBy: z.object({ list: z.enum(['labs', 'weighings']), at: z.number() }).optional(),
      }),
    ),
    weight: z
      .object({
        text: z.string(),
        why: z.string(),
        chosen: z.enum(weightBasisIds),
        others: z.array(z.object({ id: z.enum(weightBasisIds), text: z.string(), why: z.string() })),
        bmi: z.number().optional(),
      })
      .optional(),
    weightMissing: z.string().optional(),
    wasting: z.array(z.string()).optional(),
    /** What is on record and no target rests on, with why. */
    notUsed: z.array(z.string()).optional(),
    targets: z.array(targetBody),
  })
  .openapi('Proposal');
