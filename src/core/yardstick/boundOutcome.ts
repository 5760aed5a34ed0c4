import type { Interval } from '#core/quantity/interval.ts';
import type { OnBasis } from './basis.ts';
import type { Measured } from './measured.ts';
import type { VerdictWord } from './yardstick.ts';

/** A number judged against its bound, before it is put into words. */
export type BoundOutcome = DecidedOutcome | UndecidedOutcome;

interface Judged {
  readonly on: OnBasis;
  readonly value: Measured;
  /** What rounding allows the value to be; absent where nothing is known. */
  readonly range?: Interval;
  readonly closeCall: boolean;
}

export interface DecidedOutcome extends Judged {
  readonly verdict: Exclude<VerdictWord, "can't tell">;
  readonly margin: number;
  readonly marginRange: Interval;
}

interface UndecidedOutcome extends Judged {
  readonly verdict: "can't tell";
  readonly margin?: never;
  readonly marginRange?: never;
}
