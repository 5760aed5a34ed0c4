import { z } from '@hono/zod-openapi';
import { guideSchema } from '#core/guide/guideFromJson.ts';
import { issues, list, verdictWord } from './bodies.ts';
import { edgeDraft, edgeDraftAnswer } from './edge.ts';

/** A guide as docs/formats.md writes it, as far as it is written; the core checks its inside. */
export const guideJson = edgeDraft(guideSchema, 'GuideJson');
const guideAnswer = edgeDraftAnswer(guideSchema, 'GuideJson');

const guideCounts = z.object({ read: z.number(), fits: z.number(), nearly: z.number(), leftOut: z.number(), marked: z.number() });

export const guideShort = z
  .object({
    id: z.string(),
    version: z.number(),
    isDemo: z.boolean(),
    title: z.string(),
    category: z.string(),
    publishedOn: z.string().exactOptional(),
    isPublished: z.boolean(),
    /** Absent while something is still to be written. */
    counts: guideCounts.exactOptional(),
    takenOff: z.number(),
    toMend: z.number(),
  })
  .openapi('GuideShort');

/** What readers were given on the day of publication. */
export const publishedGuide = z.object({ guide: guideJson, labels: list(z.object({ foodId: z.string(), labelId: z.string() })) });
const publishedAnswer = z.object({ guide: guideAnswer, labels: list(z.object({ foodId: z.string(), labelId: z.string() })) });

export const guideFull = z
  .object({
    guide: guideAnswer,
    version: z.number(),
    isDemo: z.boolean(),
    isPublished: z.boolean(),
    /** Whether it was changed since it was published: readers have the published one. */
    isChanged: z.boolean(),
    published: publishedAnswer.exactOptional(),
  })
  .openapi('Guide');

/** A guide's foods beside its form: what stands in it and what its author may say of each. */
const guideFoodBody = z.object({
  foodId: z.string(),
  name: z.string(),
  maker: z.string().exactOptional(),
  verdict: verdictWord,
  marks: list(z.string()),
});

export const guidePreview = z
  .object({
    /** Under which `/guide-previews/{id}` shows the page; absent while something is still to be written. */
    previewId: z.string().exactOptional(),
    issues,
    counts: guideCounts.exactOptional(),
    takenOff: list(z.string()),
    foods: list(guideFoodBody),
    tests: list(z.object({ id: z.string(), text: z.string(), isOff: z.boolean() })),
  })
  .openapi('GuidePreview');

export const pageDress = z.object({ largePrint: z.boolean().default(false), paper: z.enum(['a4', 'letter']).optional() });

/** Without keys that were not given. */
export function exactDress({ largePrint, paper }: z.output<typeof pageDress>) {
  return { largePrint, ...(paper === undefined ? {} : { paper }) };
}
