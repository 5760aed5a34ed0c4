import { z } from '@hono/zod-openapi';
import { handoutSchema } from '#core/handout/handoutFromJson.ts';
import { issues, list, verdictWord } from './bodies.ts';
import { edgeDraft, edgeDraftAnswer } from './edge.ts';

/** A handout as docs/formats.md writes it, as far as it is written; the core checks its inside. */
export const handoutJson = edgeDraft(handoutSchema, 'HandoutJson');
export const handoutAnswer = edgeDraftAnswer(handoutSchema, 'HandoutJson');

const grades = z.object({
  withFoodNames: z.number().exactOptional(),
  withoutFoodNames: z.number().exactOptional(),
  sentences: z.number(),
  words: z.number(),
});
const hard = z.object({
  text: z.string(),
  grade: z.number(),
  words: z.number(),
  why: list(z.enum(['long sentence', 'long words'])),
  longWords: list(z.string()),
});

export const handoutPreview = z
  .object({
    /** Under which the page can be looked at; absent while something is still to be written. */
    previewId: z.string().exactOptional(),
    issues,
    /** What to look at before the handout is given. */
    cautions: list(z.string()),
    /** Absent in a language that is not graded. */
    grade: z
      .object({ all: grades, program: grades, author: grades, hardest: z.object({ program: list(hard), author: list(hard) }) })
      .exactOptional(),
    foods: list(
      z.object({ category: z.string(), foodId: z.string(), name: z.string(), maker: z.string().exactOptional(), verdict: verdictWord }),
    ),
  })
  .openapi('HandoutPreview');

export const handoutFull = z.object({ handout: handoutAnswer, version: z.number(), isDemo: z.boolean() }).openapi('Handout');
