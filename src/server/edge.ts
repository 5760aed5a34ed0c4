import { z } from '@hono/zod-openapi';
import type { JsonOf, TypedOf } from '#core/json/jsonOf.ts';
import { isNestedTooDeep } from '#core/json/nesting.ts';

/** A JSON object whose inside nobody has looked at yet. */
export type UnreadJson = Readonly<Record<string, unknown>>;

/**
 * A body, or a part of one, that a codec of the core reads. Callers are held to the codec's schema by the compiler, the browser's among them
 * (`hono/client`), and `/api/openapi.json` describes the inside. When it runs only "an object" is checked here: the codec checks the inside, so
 * that its issues keep their places and words. A handler gets `UnreadJson`, of which only the codec can make something.
 */
export function edgeBody<Schema extends z.ZodType>(schema: Schema, name: string) {
  return z.custom<JsonOf<Schema>>(isUnreadJson, 'an object').transform(unread).openapi(name, described(schema));
}

/** The same for what is kept while it is still being written: everything may be missing yet, but a misspelt key does not compile. */
export function edgeDraft<Schema extends z.ZodType>(schema: Schema, name: string) {
  return z.custom<TypedOf<Schema>>(isUnreadJson, 'an object').transform(unread).openapi(name, described(schema));
}

export function edgeDraftAnswer<Schema extends z.ZodType>(schema: Schema, name: string) {
  return z.custom<TypedOf<Schema>>(isUnreadJson, 'an object').openapi(name, described(schema));
}

/** A part of an answer in the form of a codec of the core: what is answered is held to the codec's schema by the compiler. */
export function edgeAnswer<Schema extends z.ZodType>(schema: Schema, name: string) {
  return z.custom<JsonOf<Schema>>(isUnreadJson, 'an object').openapi(name, described(schema));
}

/** As plain JSON: zod's type of a JSON Schema knows `true` and `false` for one, which OpenAPI's does not and no schema here is. */
function described(schema: z.ZodType) {
  const { $schema: _, ...description } = JSON.parse(JSON.stringify(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' })));
  return { type: 'object' as const, ...description };
}

function unread(json: unknown): UnreadJson {
  if (!isUnreadJson(json)) throw new TypeError('no object');
  return json;
}

function isUnreadJson(json: unknown): json is UnreadJson {
  return typeof json === 'object' && json !== null && !Array.isArray(json) && !isNestedTooDeep(json);
}
