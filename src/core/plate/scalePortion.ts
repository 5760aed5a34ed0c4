import type { Portion } from './plate.ts';

/** `times` as much of a portion, in its own measure: half of "4 slices" is 2 slices. */
export function scalePortion(portion: Portion, times: number): Portion {
  if ('grams' in portion) return { grams: portion.grams * times };
  if ('milliliters' in portion) return { milliliters: portion.milliliters * times };
  if ('servings' in portion) return { servings: portion.servings * times };
  return { measure: portion.measure, count: portion.count * times };
}
