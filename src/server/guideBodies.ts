import { z } from '@hono/zod-openapi';
import { issueBody, verdictWord } from './bodies.ts';

/** A guide as docs/formats.md writes it; the core checks its inside. */
export const guideJson = z.record(z.string(), z.unknown()).openapi('GuideJson');

export const guideCounts = z.object({ read: z.number(), fits: z.number(), nearly: z.number(), leftOut: z.number(), marked: z.number() });

export const guideShort = z
  .object({
    id: z.string(),
    version: z.number(),
    isDemo: z.boolean(),
    title: z.string(),
    category: z.string(),
    publishedOn: z.string().optional(),
    isPublished: z.boolean(),
    /** Absent while something is still to be written. */
    counts: guideCounts.optional(),
    takenOff: z.number(),
    toMend: z.number(),
  })
  .openapi('GuideShort');

/** What readers were given on the day of publication. */
export const publishedGuide = z.object({
  guide: z.object({ id: z.string() }).catchall(z.unknown()),
  labels: z.array(z.object({ foodId: z.string(), labelId: z.string() })),
});

export const guideFull = z
  .object({
    guide: guideJson,
    version: z.number(),
    isDemo: z.boolean(),
    isPublished: z.boolean(),
    /** Whether it was changed since it was published: readers have the published one. */
    isChanged: z.boolean(),
    published: publishedGuide.optional(),
  })
  .openapi('Guide');

/** A guide's foods beside its form: what stands in it and what its author may say of each. */
export const guideFoodBody = z.object({
  foodId: z.string(),
  name: z.string(),
  maker: z.string().optional(),
  verdict: verdictWord,
  marks: z.array(z.string()),
});

export const guidePreview = z
  .object({
    /** Under which `/guide-previews/{id}` shows the page; absent while something is still to be written. */
    previewId: z.string().optional(),
    issues: z.array(issueBody),
    counts: guideCounts.optional(),
    takenOff: z.array(z.string()),
    foods: z.array(guideFoodBody),
    tests: z.array(z.object({ id: z.string(), text: z.string(), isOff: z.boolean() })),
  })
  .openapi('GuidePreview');

export const pageDress = z.object({ largePrint: z.boolean().default(false), paper: z.enum(['a4', 'letter']).optional() });

/** Without keys that were not given. */
export function exactDress({ largePrint, paper }: z.output<typeof pageDress>) {
  return { largePrint, ...(paper === undefined ? {} : { paper }) };
}
