import type { Interval } from '#core/quantity/interval.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { ceilTo, cleanFloat, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';

/** Decimals that say something of a total: whole kcal and mg, tenths of a gram. */
export function decimalsOf(nutrient: Nutrient): number {
  const { unit, decimals } = nutrients[nutrient];
  return unit === 'g' ? 1 : decimals;
}

/** "250 mg sodium", "0 – 94 mg potassium", "at least 95 mg potassium"; energy is told by its unit alone: "240 kcal". */
export function amountText(nutrient: Nutrient, amount: Interval, decimals: number): string {
  const { name, unit } = nutrients[nutrient];
  const text = rangeText(amount, unit, decimals);
  return nutrient === 'energyKcal' ? text : `${text} ${name}`;
}

/** A range, rounded outward so that it never claims more than is known: "95 – 140 mg"; without an upper end "at least 95 mg". */
export function rangeText(range: Interval, unit: string, decimals: number): string {
  const lo = String(shownEnd(range, 'lo', decimals));
  if (range.lo === range.hi) return quantityText(lo, unit);
  if (range.hi === Number.POSITIVE_INFINITY) return `at least ${quantityText(lo, unit)}`;
  return `${lo} – ${quantityText(String(shownEnd(range, 'hi', decimals)), unit)}`;
}

/** A range without its unit, rounded outward: "350", "19–80", "95 or more". */
export function bareRange(range: Interval, decimals: number): string {
  const lo = String(shownEnd(range, 'lo', decimals));
  if (range.lo === range.hi) return lo;
  return range.hi === Number.POSITIVE_INFINITY ? `${lo} or more` : `${lo}–${shownEnd(range, 'hi', decimals)}`;
}

/** One end of a range as it is shown: a single figure rounded half up, the ends of a wide range outward. */
export function shownEnd({ lo, hi }: Interval, end: 'lo' | 'hi', decimals: number): number {
  if (lo === hi) return roundHalfUp(lo, decimals);
  return end === 'lo' ? floorTo(lo, decimals) : ceilTo(hi, decimals);
}

/** "5 mg", "33%". */
export function quantityText(figure: string, unit: string): string {
  return unit === '%' ? `${figure}%` : `${figure} ${unit}`;
}

/** The distance to a bound: "5 mg to spare", "10 mg over", "2 g short" of a minimum; a strict bound that is only met is "at the bound". */
export function marginText(margin: number, isKept: boolean, isMinimum: boolean, unit: string, decimals: number): string {
  if (margin === 0 && !isKept) return 'at the bound';
  const size = Math.abs(margin);
  const smallest = 10 ** -decimals;
  const figure = size > 0 && size < smallest / 2 ? `less than ${smallest}` : String(roundHalfUp(size, decimals));
  return `${quantityText(figure, unit)} ${isKept ? 'to spare' : isMinimum ? 'short' : 'over'}`;
}

/** What rounding allows the distance to be, best end first and outward: "20 mg to spare … 10 mg over". */
export function marginRangeText({ lo, hi }: Interval, isMinimum: boolean, unit: string, decimals: number): string {
  // Labels round to whole, even or tens of mg and kcal, so that ends lie on halves: "7.5 mg" is shown as it is, "13.75 mg" outward.
  const step = decimals === 0 ? 0.5 : 10 ** -decimals;
  const outward = (margin: number, round: (steps: number, decimals: number) => number): string => {
    if (!Number.isFinite(margin)) return 'no known limit';
    const shown = cleanFloat(Math.abs(round(margin / step, 0) * step));
    return `${quantityText(String(shown), unit)} ${margin >= 0 ? 'to spare' : isMinimum ? 'short' : 'over'}`;
  };
  return `${outward(hi, ceilTo)} … ${outward(lo, floorTo)}`;
}
