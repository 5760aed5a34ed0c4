import { z } from 'zod';
import type { Issue, Reading } from '#core/errors.ts';
import { checkJson } from '#core/json/checkJson.ts';
import type { JsonOf } from '#core/json/jsonOf.ts';
import type { FormStep } from '#core/json/presentForm.ts';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import type { LabelJson } from '#core/label/labelJson.ts';
import { readLabel } from '#core/label/readLabel.ts';
import type { Companion, Plate, PlateFood } from './plate.ts';

const more = z.number().positive('more than 0');

export const portionSchema = z.union(
  [
    z.strictObject({ servings: more }),
    z.strictObject({ grams: more }),
    z.strictObject({ milliliters: more }),
    z.strictObject({ measure: z.string().min(1, 'text'), count: more }),
  ],
  { error: 'one of { "servings": 1 }, { "grams": 56 }, { "milliliters": 60 }, { "measure": "cup", "count": 0.25 }, more than 0' },
);

const foodSchema = z.object({
  id: z.string().min(1, 'text'),
  name: z.string().min(1, 'text'),
  /** Read by `labelFromJson`, which forgives part by part. */
  label: z.custom<LabelJson>(),
  densityGPerMl: more.exactOptional(),
  gramsPerMeasure: z.record(z.string(), more).exactOptional(),
});

export const plateSchema = z.object({
  id: z.string().min(1, 'text'),
  title: z.string().min(1, 'text'),
  portion: portionSchema,
  companions: z.array(z.object({ food: foodSchema, portion: portionSchema, withoutSalt: foodSchema.exactOptional() })).default([]),
  categories: z.array(z.string().min(1, 'text')).min(1, 'at least one').exactOptional(),
});

export type PlateJson = JsonOf<typeof plateSchema>;

/** No earlier form has been written yet. */
const steps: readonly FormStep[] = [];

/**
 * Reads a plate as docs/formats.md describes it. Without a value when it is not valid; the issues name each place.
 * What is noticed about a companion's label travels along, its place beginning with where the label stands.
 */
export function plateFromJson(value: unknown): Reading<Plate | undefined> {
  const checked = checkJson(plateSchema, value, steps);
  if (!checked.ok) return { value: undefined, issues: checked.issues };
  const issues: Issue[] = [...checked.issues];
  const { companions, ...plate } = checked.value;
  const read: Companion[] = [];
  for (const [index, { food, portion, withoutSalt }] of companions.entries()) {
    const at = `companions[${index}]`;
    const companion = readFood(food, `${at}.food.label`, issues);
    const unsalted = withoutSalt && readFood(withoutSalt, `${at}.withoutSalt.label`, issues);
    if (!companion || (withoutSalt && !unsalted)) return { value: undefined, issues };
    read.push({ food: companion, portion, ...(unsalted ? { withoutSalt: unsalted } : {}) });
  }
  return { value: { ...plate, companions: read }, issues };
}

function readFood(food: z.output<typeof foodSchema>, place: string, issues: Issue[]): PlateFood | undefined {
  const printed = labelFromJson(food.label);
  issues.push(...placed(printed.issues, place));
  if (printed.value === undefined) return undefined;
  const label = readLabel(printed.value);
  issues.push(...placed(label.issues, place));
  return { ...food, label };
}

function placed(issues: readonly Issue[], place: string): Issue[] {
  return issues.map(issue => {
    const within = issue.place.heading;
    return { ...issue, place: { ...issue.place, heading: within ? `${place}.${within}` : place } };
  });
}
