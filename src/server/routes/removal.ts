import { createRoute, z } from '@hono/zod-openapi';
import { answers } from './answers.ts';

/** The name of a document in the address of its route. */
export const documentId = z.object({
  id: z
    .string()
    .min(1)
    .max(200)
    .openapi({ param: { name: 'id', in: 'path' } }),
});

/** The description of a route that removes a document which nobody else has changed since it was seen. */
export function removalRoute<Path extends string>(path: Path, noun: string) {
  return createRoute({
    method: 'delete',
    path,
    request: { params: documentId, query: z.object({ version: z.coerce.number() }) },
    responses: answers(z.object({ id: z.string() }), `The ${noun} that was removed`),
  });
}
