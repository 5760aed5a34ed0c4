/**
 * A closed range of real numbers, `lo <= hi`; `hi` may be Infinity. Half-open rules of the law are closed
 * outward: sodium printed as 140 mg, legally [137.5, 145), is kept as { lo: 137.5, hi: 145 }.
 */
export interface Interval {
  readonly lo: number;
  readonly hi: number;
}

/** @throws RangeError when the ends are NaN or the wrong way round: a programming mistake, not a person's. */
export function interval(lo: number, hi: number): Interval {
  if (!(lo <= hi)) throw new RangeError(`not an interval: ${lo} to ${hi}`);
  return { lo, hi };
}

export function exactly(value: number): Interval {
  return interval(value, value);
}

export const zero: Interval = { lo: 0, hi: 0 };

export function add(a: Interval, b: Interval): Interval {
  return { lo: a.lo + b.lo, hi: a.hi + b.hi };
}

/** The range of x − y. `subtract([5, 6], [1, 2])` is [3, 5]. */
export function subtract(a: Interval, b: Interval): Interval {
  return { lo: a.lo - b.hi, hi: a.hi - b.lo };
}

/** The range of k·x for any real k. Zero times an unbounded range is zero: none of the food was eaten. */
export function scale(a: Interval, k: number): Interval {
  if (k === 0) return zero;
  return k > 0 ? { lo: a.lo * k, hi: a.hi * k } : { lo: a.hi * k, hi: a.lo * k };
}

/** The range of x / y for x >= 0, y >= 0. A divisor that can be zero gives an unbounded quotient. */
export function divide(a: Interval, b: Interval): Interval {
  const lo = b.hi === 0 ? 0 : b.hi === Number.POSITIVE_INFINITY ? 0 : a.lo / b.hi;
  const hi = b.lo === 0 ? Number.POSITIVE_INFINITY : a.hi / b.lo;
  return { lo, hi };
}

/** What both allow, or undefined when they contradict each other: a conflict to report, never to hide. */
export function intersect(a: Interval, b: Interval): Interval | undefined {
  const lo = Math.max(a.lo, b.lo);
  const hi = Math.min(a.hi, b.hi);
  return lo <= hi ? { lo, hi } : undefined;
}

/** The smallest range that holds both. */
export function hull(a: Interval, b: Interval): Interval {
  return { lo: Math.min(a.lo, b.lo), hi: Math.max(a.hi, b.hi) };
}

export function overlaps(a: Interval, b: Interval): boolean {
  return a.lo <= b.hi && b.lo <= a.hi;
}

/** JSON has no Infinity: an unbounded upper end travels as null, and comes back as Infinity. */
export type IntervalJson = readonly [lo: number, hi: number | null];

export function intervalToJson(a: Interval): IntervalJson {
  return [a.lo, a.hi === Number.POSITIVE_INFINITY ? null : a.hi];
}

/** @throws RangeError when the ends are the wrong way round: whoever reads from outside looks first. */
export function intervalFromJson([lo, hi]: IntervalJson): Interval {
  return interval(lo, hi ?? Number.POSITIVE_INFINITY);
}

/** Whether a range has no upper end. */
export function isOpenEnded({ hi }: Interval): boolean {
  return hi === Number.POSITIVE_INFINITY;
}
