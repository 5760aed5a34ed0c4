import type { Interval } from '#core/quantity/interval.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';

/** A range in a finding's sentence, rounded outward ("126.2 to 148.8 kcal"); a single value is rounded. */
export function spanText({ lo, hi }: Interval, unit: string): string {
  if (lo === hi) return `${roundHalfUp(lo, 2)} ${unit}`;
  const low = floorTo(lo, 1);
  const high = ceilTo(hi, 1);
  if (high === Number.POSITIVE_INFINITY) return `${low} ${unit} or more`;
  return `${low} to ${high} ${unit}`;
}

/** Names as the beginning of a sentence: "Saturated fat and trans fat". */
export function sentenceStart(names: readonly string[]): string {
  const text = names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return text.charAt(0).toUpperCase() + text.slice(1);
}
