import { z } from 'zod';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';

/** A part of the day's targets that a meal may take, in percent. */
export const mealShareSchema = z.object({ name: z.string(), percent: z.number() });
export type MealShare = DeepReadonly<z.output<typeof mealShareSchema>>;

/** As a dietitian types it. */
export const typedPatternSchema = z
  .array(mealShareSchema.extend({ name: z.string().trim().min(1).max(60), percent: z.number().min(1).max(100) }))
  .min(1)
  .max(8);

export const evenPattern: readonly MealShare[] = [
  { name: 'breakfast', percent: 25 },
  { name: 'lunch', percent: 30 },
  { name: 'dinner', percent: 35 },
  { name: 'snack', percent: 10 },
];
