import { z } from 'zod';

/**
 * Examples of a schema in which every key stands, required or not, and every alternative comes at least once. What is free is made up: a
 * text, by its greatest length a day (10) or an hour (5), a figure above any least one.
 */
export function examplesOf(schema: z.ZodType): readonly unknown[] {
  return variants(z.toJSONSchema(schema, { io: 'input' }));
}

type JsonSchema = z.core.JSONSchema.BaseSchema;

function variants(schema: JsonSchema): readonly unknown[] {
  const alternatives = schema.oneOf ?? schema.anyOf;
  if (alternatives !== undefined) return alternatives.flatMap(one => variants(asSchema(one)));
  if (schema.const !== undefined) return [schema.const];
  if (schema.enum !== undefined) return schema.enum;
  switch (schema.type) {
    case 'object':
      return objects(Object.entries(schema.properties ?? {}).map(([key, one]) => [key, variants(asSchema(one))] as const));
    case 'array':
      return [variants(asSchema(Array.isArray(schema.items) ? schema.items[0] : schema.items))];
    case 'string':
      return [schema.maxLength === 10 ? '2026-06-01' : schema.maxLength === 5 ? '07:30' : 'a text'];
    case 'number':
      return [3];
    case 'boolean':
      return [true];
    default:
      throw new Error(`no example of ${JSON.stringify(schema)}`);
  }
}

/** As many as the key with the most variants has; the others begin again. */
function objects(keys: readonly (readonly [key: string, of: readonly unknown[]])[]): readonly unknown[] {
  const most = Math.max(1, ...keys.map(([, of]) => of.length));
  return Array.from({ length: most }, (_, at) => Object.fromEntries(keys.map(([key, of]) => [key, of[at % of.length]])));
}

function asSchema(schema: z.core.JSONSchema._JSONSchema | undefined): JsonSchema {
  if (typeof schema !== 'object') throw new Error('no schema');
  return schema;
}
