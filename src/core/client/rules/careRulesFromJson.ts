import { z } from 'zod';
import type { Issue, Reading } from '#core/errors.ts';
import { checkJson } from '#core/json/checkJson.ts';
import { isDay } from '../calendarDay.ts';
import { type CareFigureId, type CareRules, careFigureIds, careFigures } from './careRules.ts';

const schema = z.array(
  z.object({
    id: z.enum(careFigureIds as [CareFigureId, ...CareFigureId[]]),
    value: z.number(),
    by: z.string().trim().min(1, 'who set it').max(200),
    on: z.string().refine(isDay, 'a day, yyyy-mm-dd'),
  }),
);

/**
 * Reads the figures that a clinic has set, oldest first. Refused whole, with the place of each fault: an id that is not known, a value
 * outside what a clinic may set, nobody named, no day.
 */
export function careRulesFromJson(value: unknown): Reading<CareRules | undefined> {
  const checked = checkJson(schema, value);
  if (!checked.ok || checked.issues.length > 0) return { value: undefined, issues: checked.issues };
  const issues = checked.value.flatMap(({ id, value: set }, at): Issue[] => {
    const { lo, hi, unit } = careFigures[id];
    if (set >= lo && set <= hi) return [];
    return [{ code: 'figure-outside', place: { heading: `[${at}].value` }, found: String(set), expected: `${lo} to ${hi} ${unit}` }];
  });
  return issues.length > 0 ? { value: undefined, issues } : { value: checked.value, issues: [] };
}
