import type { Interval } from '#core/quantity/interval.ts';
import type { OnBasis } from './basis.ts';
import { type Bound, keeps, marginOf, withoutDust } from './bound.ts';
import { boundSentence, cannotTellSentence } from './boundSentence.ts';
import { type Measured, measure } from './measured.ts';
import type { ToldTest } from './toldTest.ts';
import type { TestVerdict, VerdictWord } from './yardstick.ts';

/** Judges a number against its bound on one basis. docs/rules/yardstick.md, YST-1 to YST-9. */
export function judgeBound(told: ToldTest, on: OnBasis): TestVerdict {
  const { test, bound } = told;
  const value = measure(test.measure, on, told.useEstimates);
  const { judged, range, estimated } = value;
  const outcome = { testId: test.id, bound: bound.figure, estimated };
  if (judged === undefined || range === undefined) {
    return { ...outcome, verdict: "can't tell", closeCall: false, why: cannotTellSentence(told, on, value) };
  }
  const compared = { judged: cleaned(judged), range: cleaned(range) };
  const { verdict, end } = decide(bound, told.slack, judged, value);
  if (verdict === "can't tell") {
    return { ...outcome, ...compared, verdict, closeCall: false, why: cannotTellSentence(told, on, value) };
  }
  const margin = marginOf(bound, end);
  const marginRange = marginRangeOf(bound, range);
  const closeCall = crosses(bound, range);
  const why = boundSentence(told, on, value, { verdict, margin, marginRange, closeCall });
  return { ...outcome, ...compared, verdict, margin, marginRange, closeCall, why };
}

/**
 * A maximum is judged at the high end and a minimum at the low end of what is compared. With a part unknown, or an end
 * without limit, only what the known part settles is told: a maximum is over, a minimum is reached.
 */
function decide(bound: Bound, slack: number, judged: Interval, value: Measured): { verdict: VerdictWord; end: number } {
  const isMinimum = bound.kind === 'atLeast';
  const unsafe = isMinimum ? judged.lo : judged.hi;
  if (value.missing.length === 0 && Number.isFinite(unsafe)) {
    return { verdict: wordFor(bound, slack, unsafe, judged.lo < judged.hi), end: unsafe };
  }
  const sure = Number.isFinite(unsafe) ? unsafe : judged.lo;
  const isSettled = Number.isFinite(sure) && (value.missing.length === 0 || value.isFloor);
  const verdict = wordFor(bound, slack, sure, false);
  return { verdict: isSettled && verdict === (isMinimum ? 'fits' : 'over') ? verdict : "can't tell", end: sure };
}

function wordFor(bound: Bound, slack: number, value: number, isOpenEnd: boolean): VerdictWord {
  if (keeps(bound, value, isOpenEnd)) return 'fits';
  return slack > 0 && -marginOf(bound, value) <= slack ? 'nearly' : 'over';
}

/** Whether rounding could tip it. Upper ends are excluded by the printing rules, so a strict bound may be touched by one. */
function crosses(bound: Bound, range: Interval): boolean {
  const touches = bound.kind === 'atMost' ? range.lo <= bound.figure : range.lo < bound.figure;
  return touches && bound.figure < range.hi;
}

function marginRangeOf(bound: Bound, range: Interval): Interval {
  return bound.kind === 'atLeast'
    ? cleaned({ lo: range.lo - bound.figure, hi: range.hi - bound.figure })
    : cleaned({ lo: bound.figure - range.hi, hi: bound.figure - range.lo });
}

function cleaned({ lo, hi }: Interval): Interval {
  return { lo: withoutDust(lo), hi: withoutDust(hi) };
}
