import type { z } from 'zod';
import type { Reading } from '../errors.ts';
import { checkJson, type JsonIssueCode } from './checkJson.ts';
import type { FormStep } from './presentForm.ts';

/** JSON that is read whole or refused with the place of each fault: a key that nobody reads is a fault too, for what it says would be lost. */
export function readWhole<Schema extends z.ZodType>(
  schema: Schema,
  json: unknown,
  steps?: readonly FormStep[],
): Reading<z.output<Schema> | undefined, JsonIssueCode> {
  const checked = checkJson(schema, json, steps);
  if (!checked.ok || checked.issues.length > 0) return { value: undefined, issues: checked.issues };
  return { value: checked.value, issues: [] };
}
