import { isNestedTooDeep } from '#core/json/nesting.ts';

/** Own decision, in characters: several times what one request can bring. What is longer was made to fill the memory of whoever reads it. */
export const longestKeptText = 40 * 2 ** 20;

/**
 * JSON text of a column as what it should hold. `shape` looks at what was parsed and gives it its type; undefined when it
 * is damaged: no JSON, or another thing.
 */
export function readJson<Value>(text: string, shape: (json: unknown) => Value | undefined): Value | undefined {
  if (text.length > longestKeptText) return undefined;
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return undefined;
  }
  return isNestedTooDeep(json) ? undefined : shape(json);
}

export function isObject(json: unknown): json is Record<string, unknown> {
  return typeof json === 'object' && json !== null && !Array.isArray(json);
}
