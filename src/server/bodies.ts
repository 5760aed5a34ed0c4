import { z } from '@hono/zod-openapi';
import { additiveClasses, certainties } from '#core/additive/additive.ts';
import { settings, verdictWords } from '#core/yardstick/yardstick.ts';

/** The shapes that several parts of the interface share. Lists in an answer are read-only, as the use cases give them. */
export const list = <Item extends z.ZodType>(item: Item) => z.array(item).readonly();

export const setting = z.enum(settings);
export const verdictWord = z.enum(verdictWords);
/** [lo, hi]; an end without limit is null. */
export const range = z.tuple([z.number().nullable(), z.number().nullable()]).readonly();

export const workspaceBody = z
  .object({
    foods: z.number(),
    labels: z.number(),
    demoFoods: z.number(),
    photos: z.number(),
    revision: z.number(),
    /** When the shelf was last changed, ISO 8601, UTC. */
    writtenAt: z.string().exactOptional(),
    categories: list(z.object({ name: z.string(), foods: z.number() })),
    database: z.string(),
  })
  .openapi('Workspace');

/** An additive that a label names, in short. */
export const additiveShort = z.object({
  class: z.enum(additiveClasses),
  name: z.string(),
  counts: z.boolean(),
  certainty: z.enum(certainties),
});

export const issueBody = z.object({
  code: z.string(),
  place: z.object({
    file: z.string().exactOptional(),
    line: z.number().exactOptional(),
    column: z.number().exactOptional(),
    row: z.number().exactOptional(),
    heading: z.string().exactOptional(),
    start: z.number().exactOptional(),
    end: z.number().exactOptional(),
  }),
  found: z.string(),
  expected: z.string(),
});
export const issues = list(issueBody);

/** RFC 9457, with the code and the next step of the fault catalogue. */
export const problemBody = z
  .object({ type: z.string(), title: z.string(), status: z.number(), detail: z.string(), code: z.string(), nextStep: z.string() })
  .openapi('Problem');
