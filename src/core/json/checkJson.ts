import type { z } from 'zod';
import type { Issue } from '../errors.ts';
import { isNestedTooDeep } from './nesting.ts';
import { type FormStep, presentForm } from './presentForm.ts';
import { shownJson } from './shownJson.ts';

export type JsonIssueCode = 'json-not-valid' | 'json-key-not-known' | 'json-format-not-known';

export type JsonCheck<Value> =
  | { readonly ok: true; readonly value: Value; readonly issues: readonly Issue<JsonIssueCode>[] }
  | { readonly ok: false; readonly issues: readonly Issue<JsonIssueCode>[] };

/**
 * Checks JSON from outside against a schema. Every fault names its place ("companions[0].portion"), what stands there
 * and what was expected. A key that nobody reads is reported and left alone, so that a slip of the pen is seen. What was written by an
 * earlier program goes through `steps` first; without them it is no thing that is kept, and has no form.
 */
export function checkJson<Schema extends z.ZodType>(
  schema: Schema,
  given: unknown,
  steps?: readonly FormStep[],
): JsonCheck<z.output<Schema>> {
  if (isNestedTooDeep(given)) return { ok: false, issues: [tooDeep] };
  const { value, issues } = steps === undefined ? { value: given, issues: [] } : presentForm(given, steps);
  if (issues.length > 0) return { ok: false, issues };
  const checked = schema.safeParse(value);
  if (!checked.success) {
    return {
      ok: false,
      issues: checked.error.issues.map(({ path, message }) => ({
        code: 'json-not-valid',
        place: { heading: placeText(path) },
        found: shownJson(path.reduce<unknown>((at, key) => (isObject(at) ? at[key] : undefined), value)),
        expected: message,
      })),
    };
  }
  return { ok: true, value: checked.data, issues: keysNotRead(value, checked.data, []) };
}

const tooDeep: Issue<JsonIssueCode> = {
  code: 'json-not-valid',
  place: {},
  found: 'JSON that is nested deeper than 200 levels',
  expected: 'what docs/formats.md describes',
};

/** Keys of `read` that `kept` no longer has; arrays are compared by position, text and numbers not at all. */
function keysNotRead(read: unknown, kept: unknown, path: readonly PropertyKey[]): Issue<JsonIssueCode>[] {
  if (read === kept || !isObject(read) || !isObject(kept)) return [];
  return Object.keys(read).flatMap(key =>
    Object.hasOwn(kept, key)
      ? keysNotRead(read[key], kept[key], [...path, Array.isArray(read) ? Number(key) : key])
      : [
          {
            code: 'json-key-not-known' as const,
            place: { heading: placeText([...path, key]) },
            found: key,
            expected: 'a key from docs/formats.md; nobody reads this one',
          },
        ],
  );
}

function placeText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    return text === '' ? String(key) : `${text}.${String(key)}`;
  }, '');
}

function isObject(value: unknown): value is Record<PropertyKey, unknown> {
  return typeof value === 'object' && value !== null;
}
