import { add, exactly, type Interval, scale, zero } from './interval.ts';

/** Where a figure comes from. A screen must never let one look like another. */
export const amountSources = ['printed', 'computed', 'reference', 'estimated'] as const;
export type AmountSource = (typeof amountSources)[number];

/**
 * Why an amount is not known. Closed list, each told to the person in words by `unknownReasonText`.
 * Missing is unknown, never zero.
 */
export type UnknownReason =
  | 'not-printed'
  | 'not-legible'
  | 'not-a-number'
  | 'contradiction'
  | 'no-serving-mass'
  | 'no-measure-mass'
  | 'no-density'
  | 'no-label'
  | 'old-daily-value-unclear';

export const unknownReasonText: Record<UnknownReason, string> = {
  'not-printed': 'not on the label',
  'not-legible': 'not legible: read the package again',
  'not-a-number': 'the printed figure could not be read',
  contradiction: 'the printed figures contradict each other',
  'no-serving-mass': 'the label does not say what a serving weighs',
  'no-measure-mass': 'nobody has said what this measure weighs',
  'no-density': 'the portion is a volume and the density is not known',
  'no-label': 'no label has been read',
  'old-daily-value-unclear': 'a %DV alone, and it is unclear which Daily Value it is a percent of',
};

export interface KnownAmount {
  readonly kind: 'known';
  /**
   * The printed number, when the law lets it stand for itself in a comparison. Absent when the print stands for
   * a wide range (potassium "0 mg" is 0 up to 94 mg; a %DV alone; "<1 g"): then the unsafe end is judged.
   */
  readonly printed?: number;
  /** The most likely value of an estimate. */
  readonly likely?: number;
  readonly range: Interval;
  readonly source: AmountSource;
}

export interface UnknownAmount {
  readonly kind: 'unknown';
  readonly reason: UnknownReason;
}

/** One nutrient in one portion, in the nutrient's canonical unit. */
export type Amount = KnownAmount | UnknownAmount;

export function unknown(reason: UnknownReason): UnknownAmount {
  return { kind: 'unknown', reason };
}

/** An exact figure, such as a reference value without a stated spread or a figure that the trade agrees on. */
export function knownExactly(value: number, source: AmountSource): KnownAmount {
  return { kind: 'known', printed: value, range: exactly(value), source };
}

/** Amounts are linear in the portion: half the portion, half of the printed figure and half of its range. */
export function scaleAmount(amount: Amount, factor: number): Amount {
  if (amount.kind === 'unknown' || factor === 1) return amount;
  return {
    kind: 'known',
    ...(amount.printed === undefined ? {} : { printed: amount.printed * factor }),
    ...(amount.likely === undefined ? {} : { likely: amount.likely * factor }),
    range: scale(amount.range, factor),
    source: amount.source,
  };
}

/** What is compared with a bound: the printed number where there is one, else the whole range. */
export function judgedRange(amount: KnownAmount): Interval {
  return amount.printed === undefined ? amount.range : exactly(amount.printed);
}

export interface MissingPart {
  /** The food whose amount is unknown, in the person's words. */
  readonly of: string;
  readonly reason: UnknownReason;
}

/**
 * A sum over foods eaten together. `judged` is what is compared with a bound (printed numbers where they stand
 * for themselves, whole ranges where not); `range` is what rounding allows; both cover the known part only.
 */
export interface Total {
  readonly judged: Interval;
  readonly range: Interval;
  /** True when a part of the sum is an estimate: the verdict must say so. */
  readonly estimated: boolean;
  readonly missing: readonly MissingPart[];
}

export interface TotalPart {
  readonly of: string;
  readonly amount: Amount;
}

/** Adds amounts; an unknown part is carried by name and never counted as zero. No parts at all is exactly zero. */
export function totalOf(parts: readonly TotalPart[]): Total {
  let judged = zero;
  let range = zero;
  let estimated = false;
  const missing: MissingPart[] = [];
  for (const { of, amount } of parts) {
    if (amount.kind === 'unknown') {
      missing.push({ of, reason: amount.reason });
      continue;
    }
    judged = add(judged, judgedRange(amount));
    range = add(range, amount.range);
    if (amount.source === 'estimated') estimated = true;
  }
  return { judged, range, estimated, missing };
}
