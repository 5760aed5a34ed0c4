import type { Interval } from '#core/quantity/interval.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';

/** A figure as a sentence shows it: whole numbers as they are, others to `decimals`. */
export function figureText(value: number, decimals: number): string {
  return Number.isInteger(value) ? String(value) : String(roundHalfUp(value, decimals));
}

/** A range, rounded outward so that it never claims more than is known: "95 … 140 mg"; without an upper end "at least 95 mg". */
export function rangeText({ lo, hi }: Interval, unit: string, decimals: number): string {
  if (lo === hi) return `${figureText(lo, decimals)} ${unit}`;
  if (hi === Number.POSITIVE_INFINITY) return `at least ${floored(lo, decimals)} ${unit}`;
  return `${floored(lo, decimals)} … ${ceiled(hi, decimals)} ${unit}`;
}

/** The distance to a bound: "5 mg to spare", "10 mg over", "2 g short" of a minimum. */
export function marginText(margin: number, isKept: boolean, isMinimum: boolean, unit: string, decimals: number): string {
  const smallest = 10 ** -decimals;
  const size = Math.abs(margin);
  const figure = size > 0 && size < smallest / 2 ? `less than ${smallest}` : figureText(size, decimals);
  return `${figure} ${unit} ${isKept ? 'to spare' : isMinimum ? 'short' : 'over'}`;
}

/** What rounding allows the distance to be, best end first and outward: "20 mg to spare … 10 mg over". */
export function marginRangeText({ lo, hi }: Interval, isMinimum: boolean, unit: string, decimals: number): string {
  return `${outer(ceiled(hi, decimals), isMinimum, unit)} … ${outer(floored(lo, decimals), isMinimum, unit)}`;
}

function outer(margin: number, isMinimum: boolean, unit: string): string {
  if (!Number.isFinite(margin)) return 'no known limit';
  return `${Math.abs(margin)} ${unit} ${margin >= 0 ? 'to spare' : isMinimum ? 'short' : 'over'}`;
}

function floored(value: number, decimals: number): number {
  return Number.isInteger(value) ? value : floorTo(value, decimals);
}

function ceiled(value: number, decimals: number): number {
  return Number.isInteger(value) ? value : ceilTo(value, decimals);
}
