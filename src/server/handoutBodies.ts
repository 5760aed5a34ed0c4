import { z } from '@hono/zod-openapi';
import { issueBody, verdictWord } from './bodies.ts';

/** A handout as docs/formats.md writes it; the core checks its inside. */
export const handoutJson = z.record(z.string(), z.unknown()).openapi('HandoutJson');

const grades = z.object({
  withFoodNames: z.number().optional(),
  withoutFoodNames: z.number().optional(),
  sentences: z.number(),
  words: z.number(),
});
const hard = z.object({
  text: z.string(),
  grade: z.number(),
  words: z.number(),
  why: z.array(z.enum(['long sentence', 'long words'])),
  longWords: z.array(z.string()),
});

export const handoutPreview = z
  .object({
    /** Under which the page can be looked at; absent while something is still to be written. */
    previewId: z.string().optional(),
    issues: z.array(issueBody),
    /** What to look at before the handout is given. */
    notices: z.array(z.string()),
    /** Absent in a language that is not graded. */
    grade: z
      .object({ all: grades, program: grades, author: grades, hardest: z.object({ program: z.array(hard), author: z.array(hard) }) })
      .optional(),
    foods: z.array(
      z.object({ category: z.string(), foodId: z.string(), name: z.string(), maker: z.string().optional(), verdict: verdictWord }),
    ),
  })
  .openapi('HandoutPreview');

export const handoutFull = z.object({ handout: handoutJson, version: z.number(), isDemo: z.boolean() }).openapi('Handout');
