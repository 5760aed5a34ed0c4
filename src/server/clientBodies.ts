import { z } from '@hono/zod-openapi';
import { limits, targetItems } from '#core/client/prescription/target.ts';
import { decidedFroms, decidedKinds } from '#core/client/record/record.ts';
import { weightBasisIds } from '#core/client/states/weightBasis.ts';
import { verdictWord } from './bodies.ts';

/** The shapes of the client's part of the interface. Assessments travel in the format of docs/formats.md and are read by the core. */
export const lockBody = z.object({ state: z.enum(['open', 'locked']), hasPassphrase: z.boolean() }).openapi('ClientLock');
export const assessmentJson = z.record(z.string(), z.unknown()).openapi('AssessmentJson');

export const clientShort = z
  .object({
    id: z.string(),
    version: z.number(),
    name: z.string(),
    isDemo: z.boolean(),
    setting: z.string().optional(),
    assessedOn: z.string().optional(),
    signedAt: z.string().optional(),
    /** Values that need contact the same day and for which nobody is noted as told. */
    openContacts: z.number(),
    overdue: z.number(),
  })
  .openapi('ClientShort');

const range = z.tuple([z.number(), z.number().nullable()]);
const positionBody = z.object({
  says: z.string(),
  sources: z.array(z.string()),
  toBeConfirmed: z.boolean(),
  range: range.optional(),
  limit: z.enum(limits).optional(),
  figure: z.string().optional(),
});
const targetBody = z.object({
  item: z.enum(targetItems),
  title: z.string(),
  unit: z.string(),
  kind: z.enum(['proposed', 'no-limit', 'withheld']),
  figure: z.string(),
  range: range.optional(),
  limit: z.enum(limits).optional(),
  perKg: z.string().optional(),
  weightBasis: z.string().optional(),
  needsChoice: z.boolean(),
  says: z.string(),
  reasons: z.array(z.string()),
  sources: z.array(z.string()),
  toBeConfirmed: z.boolean(),
  alternatives: z.array(positionBody),
});

export const proposalBody = z
  .object({
    notice: z.string(),
    cautions: z.array(
      z.object({
        id: z.string(),
        told: z.string(),
        because: z.string(),
        source: z.string(),
        sameDay: z.boolean(),
        /** From this client's own values or record. */
        isOwn: z.boolean(),
        contact: z.string().optional(),
        /** The day of the value: who was told before was told of another one. */
        since: z.string().optional(),
      }),
    ),
    labs: z.array(z.string()),
    issues: z.array(
      z.object({
        kind: z.enum(['refusal', 'question']),
        code: z.string(),
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

export const clientBody = clientShort
  .extend({
    assessmentId: z.string().optional(),
    assessment: assessmentJson.optional(),
    changes: z.array(z.string()).optional(),
    ...proposalBody.partial().shape,
    trends: z
      .array(
        z.object({
          analyte: z.string(),
          name: z.string(),
          unit: z.string(),
          points: z.array(z.object({ on: z.string(), value: z.number() })),
          /** Where sources wish it to be; none where no source gives a band. */
          bands: z.array(z.object({ range, source: z.string() })),
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
          state: z.enum(['overdue', 'due', 'later']),
          source: z.string(),
        }),
      )
      .optional(),
    assessments: z.array(z.object({ id: z.string(), on: z.string() })),
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
            range: range.optional(),
            limit: z.enum(limits).optional(),
            from: z.enum(decidedFroms),
            says: z.string(),
            reason: z.string().optional(),
          }),
        ),
      }),
    ),
    contacts: z.array(
      z.object({
        cautionId: z.string(),
        about: z.string().optional(),
        told: z.string(),
        on: z.string(),
        at: z.string(),
        note: z.string().optional(),
      }),
    ),
    mealPattern: z.array(z.object({ name: z.string(), percent: z.number() })).optional(),
  })
  .openapi('Client');

export const decidedTarget = z.object({
  item: z.enum(targetItems),
  /** Missing: bounded with a range; without one an own decision is no limit, and what is taken over is as it was proposed. */
  kind: z.enum(decidedKinds).optional(),
  range: range.optional(),
  limit: z.enum(limits).optional(),
  from: z.enum(decidedFroms),
  reason: z.string().max(1_000).optional(),
  says: z.string().max(2_000),
});

export const fitsBody = z
  .object({
    meal: z.string(),
    tests: z.array(z.string()),
    /** Signed minerals that labels do not tell: for how many of the foods. */
    notTold: z.array(z.object({ mineral: z.enum(['phosphorus', 'potassium']), foods: z.number(), of: z.number(), words: z.string() })),
    rows: z.array(
      z.object({
        foodId: z.string(),
        name: z.string(),
        maker: z.string().optional(),
        verdict: verdictWord,
        closeCall: z.boolean(),
        estimated: z.boolean(),
        /** The whole portion, less of it, no portion, ask first, or never: then no amount is told. */
        offer: z.enum(['portion', 'less', 'none', 'ask', 'never']),
        why: z.string(),
        /** What stands beside the food wherever it is listed. */
        marks: z.array(z.string()),
        /** The gravest first. */
        reasons: z.array(
          z.object({
            kind: z.enum(['allergen', 'avoided', 'additive', 'nutrient', 'mineral-not-told', 'unsafe']),
            testId: z.string().optional(),
            kin: z.string().optional(),
            presence: z.enum(['named', 'possible', 'unread', 'word-not-known', 'none-named']).optional(),
            text: z.string(),
          }),
        ),
        inMeal: z.string(),
        inDay: z.string(),
      }),
    ),
    toAsk: z.array(z.string()),
    none: z.string().optional(),
  })
  .openapi('WhatFits');

/** The weight that the dietitian picks; the proposal's own when missing. */
export const weightBasis = z.enum(weightBasisIds).optional();
