/** Which side of its figure a bound allows. `below` is strict: "free of sodium" is under 5 mg. */
export type BoundKind = 'atMost' | 'atLeast' | 'below';

export interface Bound {
  readonly kind: BoundKind;
  readonly figure: number;
}

/**
 * Sums and shares of decimal figures carry binary dust of this relative size; a figure within it of the bound is the
 * bound itself, so that three thirds of 140 mg stay 140 mg.
 */
const dust = 1e-9;

/**
 * Distance to the bound: positive is to spare, negative is over (or short, for a minimum). `isOpenEnd` says that the value
 * is the excluded upper end of a printed range ("<5 mg"): then even a strict bound may be touched.
 */
export function marginOf(bound: Bound, value: number): number {
  const margin = bound.kind === 'atLeast' ? value - bound.figure : bound.figure - value;
  return Math.abs(margin) <= dust * Math.max(1, Math.abs(bound.figure)) ? 0 : withoutDust(margin);
}

export function keeps(bound: Bound, value: number, isOpenEnd = false): boolean {
  const margin = marginOf(bound, value);
  return margin > 0 || (margin === 0 && (bound.kind !== 'below' || isOpenEnd));
}

/** The nearest figure of nine decimals, for output: 0.1 + 0.2 is 0.3. A survey does this a million times, so no text is made on the way. */
export function withoutDust(value: number): number {
  if (Number.isInteger(value) || Math.abs(value) > 1e6) return value;
  return Math.round(value * 1e9) / 1e9;
}
