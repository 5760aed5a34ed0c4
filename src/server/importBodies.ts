import { z } from '@hono/zod-openapi';
import { issues, list } from './bodies.ts';

export const importLook = z
  .object({
    fileName: z.string(),
    headings: list(z.string()),
    /** For each heading, the column it is taken for, or null. */
    mapping: list(z.string().nullable()),
    columns: list(z.object({ key: z.string(), name: z.string() })),
    sample: list(z.object({ row: z.number(), cells: list(z.string()) })),
    rows: list(
      z.object({
        row: z.number(),
        name: z.string(),
        maker: z.string().exactOptional(),
        does: z.enum(['begins-a-food', 'joins-a-food', 'already-there', 'left-out']),
        joins: z.string().exactOptional(),
      }),
    ),
    report: issues,
  })
  .openapi('ImportLook');

export const importDone = z
  .object({
    importId: z.string(),
    added: z.number(),
    joined: z.number(),
    alreadyThere: z.number(),
    leftOut: z.number(),
    report: issues,
  })
  .openapi('ImportDone');

/** An imported composition table in short. */
export const referenceBody = z
  .object({
    dataset: z.string(),
    source: z.string(),
    edition: z.string(),
    foods: z.number(),
    importedAt: z.string(),
  })
  .openapi('Reference');
