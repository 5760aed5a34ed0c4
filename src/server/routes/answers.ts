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

/**
 * A file in the description of a route. Its content is in the OpenAPI document and not in the type: a file is no JSON whose shape the
 * browser could be held to.
 */
export function fileAnswer(type: string, description: string): FileAnswer {
  const file = { description, content: { [type]: { schema: z.string() } } };
  return { 200: file, default: answers(z.unknown(), '').default };
}

type FileAnswer = { 200: { description: string }; default: ReturnType<typeof answers>['default'] };

/** A file as the answer of a route, with what else its headers say. */
export function fileBody(content: string | Uint8Array, type: string, headers: Readonly<Record<string, string>> = {}): Response {
  const body = typeof content === 'string' ? content : new Uint8Array(content);
  return new Response(body, { headers: { 'content-type': type, ...headers } });
}
