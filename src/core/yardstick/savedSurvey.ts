import { z } from 'zod';
import type { Reading } from '#core/errors.ts';
import { checkJson } from '#core/json/checkJson.ts';
import type { JsonOf } from '#core/json/jsonOf.ts';
import type { FormStep } from '#core/json/presentForm.ts';
import { settings } from './yardstick.ts';

const words = z.string().regex(/\S/, 'text');

/** The controls of the survey sentence: which foods, on which plate, by which yardstick, for whom. */
export const surveyControls = z.object({
  category: words,
  plateId: words,
  yardstickId: words,
  setting: z.enum(settings).exactOptional(),
  switchedOn: z.array(words).default([]),
  /** Servings in the place of the plate's portion. */
  servings: z.number().positive('more than 0').exactOptional(),
});

/** Kept as it was chosen: what was chosen may be gone by now, and is told when the survey is opened. */
export const savedSurveySchema = surveyControls.extend({
  id: z.string(),
  title: z.string().min(1, 'text').max(300, 'at most 300 characters'),
  category: z.string(),
  plateId: z.string(),
  yardstickId: z.string(),
  switchedOn: z.array(z.string()).default([]),
});

export type SavedSurveyJson = JsonOf<typeof savedSurveySchema>;

/** A survey kept under a title. */
export type SavedSurvey = Readonly<Omit<z.output<typeof savedSurveySchema>, 'switchedOn'>> & { readonly switchedOn: readonly string[] };

/** No earlier form has been written yet. */
const steps: readonly FormStep[] = [];

export function savedSurveyFromJson(value: unknown): Reading<SavedSurvey | undefined> {
  const checked = checkJson(savedSurveySchema, value, steps);
  return { value: checked.ok ? checked.value : undefined, issues: checked.issues };
}

/** A saved survey is its own JSON. */
export function savedSurveyToJson(survey: SavedSurvey): SavedSurveyJson {
  return survey;
}
