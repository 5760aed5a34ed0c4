import { z } from 'zod';
import type { Reading } from '#core/errors.ts';
import { checkJson } from '#core/plate/checkJson.ts';
import type { Assessment } from './client.ts';

const schema = z.looseObject({
  on: z.string(),
  sex: z.enum(['female', 'male']),
  labs: z.array(z.unknown()),
  weighings: z.array(z.unknown()),
});

export function assessmentFromJson(value: unknown): Reading<Assessment | undefined> {
  const checked = checkJson(schema, value);
  return checked.ok
    ? { value: checked.value as unknown as Assessment, issues: checked.issues }
    : { value: undefined, issues: checked.issues };
}
