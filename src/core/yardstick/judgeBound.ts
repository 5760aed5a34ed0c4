import type { Interval } from '#core/quantity/interval.ts';
import type { OnBasis } from './basis.ts';
import { type Bound, keeps, marginOf, withoutDust } from './bound.ts';
import type { BoundOutcome } from './boundOutcome.ts';
import { boundSentence, cannotTellReason, cannotTellSentence } from './boundSentence.ts';
import { type Measured, measure } from './measured.ts';
import type { ToldTest } from './toldTest.ts';
import type { TestVerdict, VerdictWord } from './yardstick.ts';

/** Judges a number against its bound on one basis. docs/rules/yardstick.md, YST-1 to YST-9. */
export function judgeBound(told: ToldTest, on: OnBasis): TestVerdict {
  return inWords(told, outcomeOf(told, on));
}

function outcomeOf(told: ToldTest, on: OnBasis): BoundOutcome {
  const { facts, bound } = told;
  const value = measure(facts, on, told.useEstimates);
  if (value.judged === undefined || value.range === undefined) return { on, value, verdict: "can't tell", closeCall: false };
  const range = cleaned(value.range);
  const { verdict, end } = decide(bound, told.slack, value.judged, value);
  if (verdict === "can't tell") return { on, value, range, verdict, closeCall: false };
  return {
    on,
    value,
    range,
    verdict,
    closeCall: crosses(bound, range),
    margin: marginOf(bound, end),
    marginRange: marginRangeOf(bound, value.range),
  };
}

function inWords(told: ToldTest, outcome: BoundOutcome): TestVerdict {
  const { value, range, verdict, margin, marginRange, closeCall } = outcome;
  const common = { testId: told.test.id, verdict, bound: told.bound.figure, closeCall, estimated: value.estimated };
  const compared = value.judged === undefined || range === undefined ? {} : { judged: cleaned(value.judged), range };
  if (margin === undefined) {
    const reason = cannotTellReason(told, outcome);
    return { ...common, ...compared, reason, why: cannotTellSentence(told, outcome, reason) };
  }
  return { ...common, ...compared, margin, marginRange, why: boundSentence(told, outcome) };
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

function wordFor(bound: Bound, slack: number, value: number, isOpenEnd: boolean): Exclude<VerdictWord, "can't tell"> {
  if (keeps(bound, value, isOpenEnd)) return 'fits';
  return slack > 0 && -marginOf(bound, value) <= slack ? 'nearly' : 'over';
}

/** Whether rounding could tip it. Upper ends are excluded by the printing rules, so a strict bound may be touched by one. */
function crosses({ kind, figure }: Bound, range: Interval): boolean {
  const exact = withoutDust(figure);
  const touches = kind === 'atMost' ? range.lo <= exact : range.lo < exact;
  return touches && exact < range.hi;
}

function marginRangeOf(bound: Bound, range: Interval): Interval {
  return bound.kind === 'atLeast'
    ? cleaned({ lo: range.lo - bound.figure, hi: range.hi - bound.figure })
    : cleaned({ lo: bound.figure - range.hi, hi: bound.figure - range.lo });
}

function cleaned({ lo, hi }: Interval): Interval {
  return { lo: withoutDust(lo), hi: withoutDust(hi) };
}
