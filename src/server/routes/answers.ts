import { z } from '@hono/zod-openapi';
import { problemBody } from '../bodies.ts';

/** A JSON answer in the description of a route, with the problem that every route may answer instead. */
export function answers<Schema extends z.ZodType>(schema: Schema, description: string) {
  return {
    200: { description, content: { 'application/json': { schema } } },
    default: {
      description: 'A fault, with its code and the next step (RFC 9457)',
      content: { 'application/problem+json': { schema: problemBody } },
    },
  } as const;
}

/** A JSON body in the description of a route. */
export function jsonBody<Schema extends z.ZodType>(schema: Schema) {
  return { content: { 'application/json': { schema } }, required: true } as const;
}

/** A file in the description of a route. */
export function fileAnswer(type: string, description: string) {
  return { 200: { description, content: { [type]: { schema: z.string() } } }, default: answers(z.unknown(), '').default };
}

/** The file that `fileAnswer` describes. */
export function fileResponse(bytes: Uint8Array, type: string): Response {
  // A copy, whose memory is shared with nobody.
  return new Response(new Uint8Array(bytes), { status: 200, headers: { 'content-type': type } });
}
